/** Where a command's words go: answers to `out`, everything said about the work to `err`. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** What a run ends with; see the README. */
export const DONE = 0;
export const STOPPED = 1;
export const UNUSABLE = 2;
export const REFUSED = 3;
