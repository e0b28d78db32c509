/** The public door of Rimwright: from a plan, or from typed options, to cut files. Pure: nothing here needs Node. */

export { checkModel, type Making } from './checks/index.js';
export { checkPart } from './cutting/checks/index.js';
export type { Least } from './cutting/checks/least.js';
export { type CutOptions, cut } from './cutting/cut.js';
export type { CutPart, FaceCuts } from './cutting/cut-part.js';
export { type DepthPasses, depthPasses } from './cutting/depth-passes.js';
export type { ClearingOptions, Pass } from './cutting/pass.js';
export { clearingPasses } from './cutting/passes.js';
export type { Relief } from './cutting/relief.js';
export { assembledPicture } from './drawings/assembled.js';
export type { Drawing, LabelStyle, Layer, TextLine } from './drawings/drawing.js';
export { explodedPicture } from './drawings/exploded.js';
export { nestedPicture, sheetPicture } from './drawings/nested-picture.js';
export { endDrawing, partDrawing, sideDrawing } from './drawings/part-drawing.js';
export { sheetDrawing } from './drawings/sheet-drawing.js';
export { type Finding, type Level, type Outcome, stops } from './findings/finding.js';
export { type Issue, Unusable } from './findings/unusable.js';
export * from './geometry/index.js';
export { SEAM_JOINTS, type SeamJointName, type SeamOptions } from './joints/seam-joint.js';
export { check, type Files, type Host, type Made, type MakeOptions, make, makeModel, type Plans } from './make.js';
export { cableReel } from './models/cable-reel.js';
export type { CableReelOptions } from './models/cable-reel-options.js';
export { cartWheel } from './models/cart-wheel.js';
export type { CartWheelOptions } from './models/cart-wheel-options.js';
export { type Coupon, coupon } from './models/coupon.js';
export type { CouponOptions } from './models/coupon-options.js';
export { type HandCoupon, type HandCouponOptions, handCoupon } from './models/hand-coupon.js';
export { type HelmWheel, helmWheel } from './models/helm-wheel.js';
export type { HelmWheelOptions } from './models/helm-wheel-options.js';
export { buildProp, type ModelName, type ModelOptions, type Prop } from './models/index.js';
export type { Figure, Hardware, Model, Piece, Setting } from './models/model.js';
export { prizeWheel } from './models/prize-wheel.js';
export type { PrizeWheelOptions } from './models/prize-wheel-options.js';
export { type CouponMeasured, type CouponRead, readCoupon } from './models/read-coupon.js';
export { type HandMeasured, type HandRead, readHandCoupon } from './models/read-hand-coupon.js';
export { type Crossing, type Ring, type RingOptions, type RingPlace, ring } from './models/ring.js';
export { ringFrame } from './models/ring-frame.js';
export type { RingFrameOptions } from './models/ring-frame-options.js';
export { stand } from './models/stand.js';
export type { StandOptions } from './models/stand-options.js';
export { waterWheel } from './models/water-wheel.js';
export type { WaterWheelOptions } from './models/water-wheel-options.js';
export type { GrainRule, NestedPiece, NestLayout, NestPart, NestPlacement, NestStock, Turns } from './nesting/job.js';
export { type LongNest, type NestOptions, nest, nestLong } from './nesting/nest.js';
export { type Nested, nestCuts } from './nesting/nest-cuts.js';
export { type LongSearch, type NestProgress, nestCutsLong } from './nesting/nest-cuts-long.js';
export { nestStraight, type StraightLayout } from './nesting/nest-straight.js';
export type { Placement, Sheet } from './nesting/sheet.js';
export { type CouponSheet, couponSheet, handCouponSheet } from './papers/coupon-sheet.js';
export { type HardTemplates, hardTemplates, type TemplateShop } from './papers/hard-templates.js';
export type { Report } from './papers/report.js';
export { partFaces } from './parts/faces.js';
export { type FelloeOptions, felloe, type LooseFelloeOptions, looseFelloe } from './parts/felloe.js';
export { type HandleOptions, handleEdge } from './parts/handle.js';
export { type HardTemplateOptions, hardTemplate } from './parts/hard-template.js';
export { type Bore, type DiscOptions, hubDisc } from './parts/hub-disc.js';
export { type Engraving, type NameBandOptions, nameBand, withLetters, withText } from './parts/name-band.js';
export type { Drill, Face, Feature, Label, Part, Pocket, Score } from './parts/part.js';
export { type SpokeOptions, spoke, wedge } from './parts/spoke.js';
export { type TrimSegmentOptions, trimSegment } from './parts/trim-segment.js';
export { couponLines, intoPlan } from './plan/coupon-lines.js';
export { editPlan, type PlanChange } from './plan/edit-plan.js';
export { type Plan, planSchema, readPlan, readVariants, type Shop, starterPlan } from './plan/index.js';
export {
  type DxfOptions,
  type MakerModel,
  type ReadDrawing,
  type ReadSvg,
  readDxf,
  readMaker,
  readSvg,
  readSvgPath,
  type SvgPathOptions,
  toMaker,
} from './readers/index.js';
export * from './stock/index.js';
export * from './units/index.js';
export type { FileOptions } from './writers/cut-files.js';
export { type DxfVersion, type DxfWriteOptions, writeDxf } from './writers/dxf.js';
export { type SvgWriteOptions, writeSvg } from './writers/svg.js';
