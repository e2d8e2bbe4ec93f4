/**
 * Advance widths of DejaVu Sans and DejaVu Sans Bold, in 1/2048 of the font size: the font that every writer names or
 * embeds, so a text is as wide on paper as it was reckoned here. A test compares the table with the font files.
 */
interface Advances {
  /** Code points 32 to 126. */
  readonly ascii: readonly number[]
  /** Code points 160 to 255. */
  readonly latin: readonly number[]
  /** In the order of `SYMBOLS`. */
  readonly symbols: readonly number[]
}

const UNITS_PER_EM = 2048
/** For a letter that the table lacks: more than any but a handful of Greek and Cyrillic letters take. */
const OTHER = 2300
const SYMBOLS = '–—‘’“”•…←↑→↓−≤≥⌀⅛⅜⅝⅞'

const REGULAR: Advances = {
  ascii: [
    651, 821, 942, 1716, 1303, 1946, 1597, 563, 799, 799, 1024, 1716, 651, 739, 651, 690, 1303, 1303, 1303, 1303, 1303,
    1303, 1303, 1303, 1303, 1303, 690, 690, 1716, 1716, 1716, 1087, 2048, 1401, 1405, 1430, 1577, 1294, 1178, 1587,
    1540, 604, 604, 1343, 1141, 1767, 1532, 1612, 1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799,
    690, 799, 1716, 1024, 1024, 1255, 1300, 1126, 1300, 1260, 721, 1300, 1298, 569, 569, 1186, 569, 1995, 1298, 1253,
    1300, 1300, 842, 1067, 803, 1298, 1212, 1675, 1212, 1212, 1075, 1303, 690, 1303, 1716,
  ],
  latin: [
    651, 821, 1303, 1303, 1303, 1303, 690, 1024, 1024, 2048, 965, 1253, 1716, 739, 2048, 1024, 1024, 1716, 821, 821,
    1024, 1303, 1303, 651, 1024, 821, 965, 1253, 1985, 1985, 1985, 1087, 1401, 1401, 1401, 1401, 1401, 1401, 1995, 1430,
    1294, 1294, 1294, 1294, 604, 604, 604, 604, 1587, 1532, 1612, 1612, 1612, 1612, 1612, 1716, 1612, 1499, 1499, 1499,
    1499, 1251, 1239, 1290, 1255, 1255, 1255, 1255, 1255, 1255, 2011, 1126, 1260, 1260, 1260, 1260, 569, 569, 569, 569,
    1253, 1298, 1253, 1253, 1253, 1253, 1253, 1716, 1253, 1298, 1298, 1298, 1298, 1212, 1300, 1212,
  ],
  symbols: [
    1024, 2048, 651, 651, 1061, 1061, 1208, 2048, 1716, 1716, 1716, 1716, 1716, 1716, 1716, 1233, 1985, 1985, 1985,
    1985,
  ],
}

const BOLD: Advances = {
  ascii: [
    713, 934, 1067, 1716, 1425, 2052, 1786, 627, 936, 936, 1071, 1716, 778, 850, 778, 748, 1425, 1425, 1425, 1425, 1425,
    1425, 1425, 1425, 1425, 1425, 819, 819, 1716, 1716, 1716, 1188, 2048, 1585, 1561, 1503, 1700, 1399, 1399, 1681,
    1714, 762, 762, 1587, 1305, 2038, 1714, 1741, 1501, 1741, 1577, 1475, 1397, 1663, 1585, 2259, 1579, 1483, 1485, 936,
    748, 936, 1716, 1024, 1024, 1382, 1466, 1214, 1466, 1389, 891, 1466, 1458, 702, 702, 1362, 702, 2134, 1458, 1407,
    1466, 1466, 1010, 1219, 979, 1458, 1335, 1892, 1321, 1335, 1192, 1458, 748, 1458, 1716,
  ],
  latin: [
    713, 934, 1425, 1425, 1303, 1425, 748, 1024, 1024, 2048, 1155, 1323, 1716, 850, 2048, 1024, 1024, 1716, 897, 897,
    1024, 1507, 1303, 778, 1024, 897, 1155, 1323, 2120, 2120, 2120, 1188, 1585, 1585, 1585, 1585, 1585, 1585, 2222,
    1503, 1399, 1399, 1399, 1399, 762, 762, 762, 762, 1716, 1714, 1741, 1741, 1741, 1741, 1741, 1716, 1741, 1663, 1663,
    1663, 1663, 1483, 1511, 1473, 1382, 1382, 1382, 1382, 1382, 1382, 2146, 1214, 1389, 1389, 1389, 1389, 702, 702, 702,
    702, 1407, 1458, 1407, 1407, 1407, 1407, 1407, 1716, 1407, 1458, 1458, 1458, 1458, 1335, 1466, 1335,
  ],
  symbols: [
    1024, 2048, 778, 778, 1346, 1346, 1309, 2048, 1716, 1716, 1716, 1716, 1716, 1716, 1716, 1233, 2120, 2120, 2120,
    2120,
  ],
}

/**
 * How wide one line of text is, mm, set in DejaVu Sans at a font size of `heightMm`. Kerning is left out, which makes
 * the figure a little too large at worst; letters beyond the table count as wide ones.
 */
export function textWidth(text: string, heightMm: number, bold = false): number {
  const advances = bold ? BOLD : REGULAR
  let units = 0
  for (const letter of text) units += advanceOf(letter, advances)
  return (units * heightMm) / UNITS_PER_EM
}

function advanceOf(letter: string, advances: Advances): number {
  const code = letter.codePointAt(0) ?? 0
  if (code >= 32 && code <= 126) return advances.ascii[code - 32] ?? OTHER
  if (code >= 160 && code <= 255) return advances.latin[code - 160] ?? OTHER
  return advances.symbols[SYMBOLS.indexOf(letter)] ?? OTHER
}

/** Heights above and below the baseline that text takes, as shares of the font size; accents and tails included. */
export const TEXT_ASCENT = 0.93
export const TEXT_DESCENT = 0.24
