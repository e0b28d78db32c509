/** A bar on the terminal that says how far a long piece of work is. */
export interface ProgressBar {
  /** @param share 0 to 1 @param note what there is so far */
  readonly show: (share: number, note: string) => void;
  readonly end: () => void;
}

const SILENT: ProgressBar = { show: () => undefined, end: () => undefined };

/** Whether somebody watches: standard error is a terminal, and no build server's. */
const isWatched = (): boolean => process.stderr.isTTY === true && !process.env['CI'];

/** A bar on standard error, or nothing where nobody watches or wants it. */
export async function progressBar(title: string, quiet: boolean): Promise<ProgressBar> {
  if (quiet || !isWatched()) return SILENT;
  const { SingleBar, Presets } = await import('cli-progress');
  const format = `${title} {bar} {percentage}% {note}`;
  const bar = new SingleBar(
    { format, stream: process.stderr, hideCursor: true, clearOnComplete: true },
    Presets.shades_classic,
  );
  bar.start(100, 0, { note: '' });
  return { show: (share, note) => bar.update(Math.round(100 * Math.min(1, share)), { note }), end: () => bar.stop() };
}
