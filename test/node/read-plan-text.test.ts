import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { Unusable } from '../../lib/findings/unusable.js';
import { readPlanText } from '../../lib/node/index.js';

const root = mkdtempSync(join(tmpdir(), 'rimwright-read-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const file = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(root, name), content);
  return join(root, name);
};

describe("a plan's file", () => {
  test('is read as UTF-8, without its byte order mark', async () => {
    expect(await readPlanText(file('bom.yaml', '\ufefftitle: Größe 4½'))).toBe('title: Größe 4½');
    expect(await readPlanText(file('empty.yaml', ''))).toBe('');
    expect(await readPlanText(file('long.yaml', 'x'.repeat(1024 * 1024)))).toHaveLength(1024 * 1024);
  });

  test.each([
    ['nothing there', () => join(root, 'none.yaml'), 'a path that exists'],
    ['a folder', () => root, 'a file'],
    ['no text', () => file('latin1.yaml', Uint8Array.of(0x47, 0x72, 0xf6, 0xdf, 0x65)), 'UTF-8'],
    ['too long', () => file('huge.yaml', 'x'.repeat(1024 * 1024 + 1)), 'at most 1 MiB'],
    ['endless', () => '/dev/zero', 'at most 1 MiB'],
    ['a path through a file', () => join(file('a.yaml', ''), 'b.yaml'), 'leads through folders only'],
    ['a zero byte', () => 'a\0b', 'without zero bytes'],
  ])('%s is refused by name', async (_, path, allowed) => {
    const read = readPlanText(path());
    await expect(read).rejects.toThrow(Unusable);
    await expect(read).rejects.toThrow(/the plan file is /);
    await expect(read).rejects.toThrow(allowed);
  });
});
