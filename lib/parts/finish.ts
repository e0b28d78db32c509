/** What a part is stained, painted or oiled with. */
export interface Finish {
  /** as the maker calls it: walnut stain, deck grey */
  readonly name: string;
  /** #rrggbb, for the pictures */
  readonly color?: string;
  /** 1 or more; 1 unless given */
  readonly coats?: number;
}
