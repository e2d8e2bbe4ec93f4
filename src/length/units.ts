/** The unit of a bare number in a definition, and of the lengths that people read. */
export type Units = 'mm' | 'in'

/** One inch, exactly (international yard and pound agreement, 1959; NIST SP 811, B.8). */
export const MM_PER_INCH = 25.4
