/** A picture as it is sent: its size, its frames (not fields) a second, and whether each is sent as two fields. */
export interface VideoFormat {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly frameRateHz: number;
  readonly interlaced: boolean;
}
