/** What the form shows of a definition: its data as written. Plain data, since it comes from a worker. */
export interface FormModel {
  readonly data: unknown
}
