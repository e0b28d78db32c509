import { open } from 'node:fs/promises';
import { refuse } from '../findings/unusable.js';
import { explain } from './machine-refused.js';

/** No plan is longer: what is read stops here, so that a device or a wrong file does no harm. */
const LONGEST = 1024 * 1024;

async function firstBytes(path: string, most: number): Promise<Uint8Array> {
  const file = await open(path, 'r');
  try {
    const chunks: Uint8Array[] = [];
    let read = 0;
    while (read < most) {
      const { bytesRead, buffer } = await file.read(new Uint8Array(Math.min(65536, most - read)));
      if (bytesRead === 0) break;
      chunks.push(buffer.subarray(0, bytesRead));
      read += bytesRead;
    }
    return new Uint8Array(Buffer.concat(chunks));
  } finally {
    await file.close();
  }
}

/** The text of a plan's file: UTF-8, at most 1 MiB.
 * @throws Unusable naming the file and what is allowed; MachineRefused where it cannot be read */
export async function readPlanText(path: string): Promise<string> {
  const field = 'the plan file';
  let bytes: Uint8Array;
  try {
    bytes = await firstBytes(path, LONGEST + 1);
  } catch (error) {
    return explain(error, field, path, `reading ${path}`);
  }
  if (bytes.length > LONGEST) refuse(field, `${path}, which is longer than 1 MiB`, 'a plan of at most 1 MiB');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuse(field, `${path}, which is not UTF-8 text`, 'a text file in UTF-8');
  }
}
