/** How the parts are cut: by hand to the finished lines, or along tool-centre lines. */
export type Method = 'hand' | 'router' | 'laser';
