import { refuse, Unusable } from '../lib/findings/unusable.js';
import type { Plans } from '../lib/make.js';
import { readPlanText } from '../lib/node/read-plan-text.js';
import type { Plan } from '../lib/plan/plan.js';
import { readPlan, readVariants } from '../lib/plan/read-plan.js';
import type { Asked } from './command.js';
import { oneValue, operand } from './operand.js';

/** What is worked out at a time: plans that share their stock; `folder` is where its files go below --out, the folder itself unless given. */
export interface Work {
  readonly plans: Plans;
  readonly title: string;
  readonly folder?: string;
}

/** The plans that are named after a command, or the variants of one of them.
 * @throws Unusable for a plan, or a variant, that is not there or cannot be used; MachineRefused where a file cannot be read */
export async function askedPlans(asked: Asked): Promise<readonly Work[]> {
  const file = operand(asked, 'PLAN', "a plan's file");
  if (asked.texts('variant').length > 0) return askedVariants(asked, await readPlanText(file));
  const texts = await Promise.all(asked.words.map(readPlanText));
  const read = texts.map((text, i) => (texts.length > 1 ? readPlanOf(asked.words[i]!, text) : readPlan(text)));
  const [first, ...more] = read as [Plan, ...Plan[]];
  return [{ plans: [first, ...more], title: [first, ...more].map(p => p.title).join(', ') }];
}

/** One of several plans: what is wrong with it is said with its file. */
function readPlanOf(file: string, text: string): Plan {
  try {
    return readPlan(text);
  } catch (error) {
    if (!(error instanceof Unusable)) throw error;
    throw new Unusable(error.issues.map(issue => ({ ...issue, field: `${file}: ${issue.field}` })));
  }
}

function askedVariants(asked: Asked, text: string): readonly Work[] {
  if (asked.words.length > 1) refuse('--variant', 'given with several plans', 'one plan with it');
  const name = oneValue(asked, 'variant', "a variant's name, or all");
  if (name !== 'all') {
    const plan = readPlan(text, name);
    return [{ plans: plan, title: plan.title }];
  }
  return [...readVariants(text)].map(([folder, plan]) => ({ plans: plan, title: plan.title, folder }));
}
