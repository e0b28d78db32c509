import { allowedNames } from '../../lib/findings/nearest.js';
import { refuse } from '../../lib/findings/unusable.js';
import { tables } from '../../lib/stock/tables.js';
import { writeJson } from '../../lib/writers/json.js';
import { type Command, options } from '../command.js';
import { DONE } from '../io.js';
import { tableText } from '../table-text.js';

/** The reference tables. */
export const stock: Command = {
  name: 'stock',
  operands: '[TABLE]',
  most: 1,
  summary: 'Print the reference tables, or one: what is sold, in which sizes, and who says so.',
  options: { json: options.json, quiet: options.quiet },
  examples: [
    ['$0 stock', 'all tables'],
    ['$0 stock bearings', 'ball bearings by name'],
    ['$0 stock lumber --json', 'boards as data'],
  ],
  run: async (asked, io) => {
    const all = tables();
    const [name] = asked.words;
    const names = all.map(t => t.name);
    if (name !== undefined && !names.includes(name)) refuse('TABLE', name, allowedNames(name, names));
    const chosen = all.filter(t => name === undefined || t.name === name);
    io.out(asked.flag('json') ? writeJson(chosen) : chosen.map(tableText).join('\n'));
    return DONE;
  },
};
