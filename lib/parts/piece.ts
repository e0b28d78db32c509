import type { Region } from '../geometry/outline.js';
import type { Mm } from '../units/length.js';
import type { Feature, Part, PartKind } from './part.js';

/** What every part's builder needs to know beside its sizes. */
export interface PieceOptions {
  /** mm */
  readonly thickness: Mm;
  /** name of the stock it is cut from */
  readonly stock: string;
  /** its kind unless given */
  readonly id?: string;
  readonly name?: string;
  /** 1 unless given */
  readonly quantity?: number;
  /** false where the stock has no grain to follow (plywood); true unless given: along x */
  readonly grained?: boolean;
}

/** A part of a kind with its shape, and the defaults of whatever its options leave out. */
export function piece(
  kind: PartKind,
  name: string,
  o: PieceOptions,
  shape: { readonly region: Region; readonly features?: readonly Feature[] },
): Part {
  return {
    id: o.id ?? kind,
    kind,
    name: o.name ?? name,
    quantity: o.quantity ?? 1,
    stock: o.stock,
    thickness: o.thickness,
    region: shape.region,
    features: shape.features ?? [],
    ...((o.grained ?? true) && { grain: 0 }),
  };
}
