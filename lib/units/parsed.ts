/** What reading a measure from text comes to: its value, or what would have been allowed. */
export type Parsed = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly allowed: string };
