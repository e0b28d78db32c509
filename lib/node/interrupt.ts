/** A wish to stop, made with Ctrl-C. */
export interface Interrupt {
  /** settles at the first Ctrl-C; a second ends the program as usual */
  readonly stopped: Promise<void>;
  /** gives Ctrl-C its usual meaning back */
  readonly off: () => void;
}

/** Takes the next Ctrl-C as a wish to stop early with what there is. */
export function onInterrupt(): Interrupt {
  let stop = (): void => undefined;
  const stopped = new Promise<void>(resolve => {
    stop = resolve;
  });
  process.once('SIGINT', stop);
  return { stopped, off: () => void process.off('SIGINT', stop) };
}
