/** Inside the library a length is millimetres, an angle radians; y points up, anticlockwise is positive. */
export type Mm = number;
export type Radians = number;
