/** A width and a height, mm. */
export interface Size {
  readonly width: number
  readonly height: number
}
