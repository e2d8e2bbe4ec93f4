import type { ErrorCode } from 'yaml'

interface Words {
  readonly message: string
  readonly expected: string
}

const say = (message: string, expected: string): Words => ({ message, expected })

/** Two definitions in one file. */
export const MULTIPLE_DOCUMENTS = say(
  'a second document begins here',
  'one definition in a file, without a line "---" in the middle',
)

const INDENT = say('the indent does not fit the lines above', 'keys of one group in one column, indented with spaces')

/** YAML mistakes in plain words. */
const WORDS: Partial<Record<ErrorCode, Words>> = {
  BAD_INDENT: INDENT,
  TAB_AS_INDENT: say('a tab stands in the indent', 'spaces'),
  BAD_SCALAR_START: say('a text cannot begin with this character', 'the text in quotes'),
  BLOCK_AS_IMPLICIT_KEY: say('two keys stand on one line', 'each key on its own line; a text with ": " in quotes'),
  BLOCK_IN_FLOW: say('a list or group with dashes stands inside brackets', 'brackets inside brackets, or no brackets'),
  BAD_DQ_ESCAPE: say('this backslash has no meaning here', 'two backslashes, or the text in single quotes'),
  BAD_DIRECTIVE: say('this line beginning with % is not known', 'no such line'),
  BAD_COLLECTION_TYPE: say('this tag does not fit', 'no tag'),
  TAG_RESOLVE_FAILED: say(
    'tags (words beginning with "!") have no use here',
    'no tag; a text with ! at its start in quotes',
  ),
  MULTIPLE_TAGS: say('tags (words beginning with "!") have no use here', 'no tag'),
  MULTIPLE_ANCHORS: say('one value has two anchors', 'one anchor'),
  BAD_ALIAS: say('this is not the name of an alias', 'a text with * or & at its start in quotes'),
  ALIAS_PROPS: say('an alias cannot have an anchor or a tag', 'the alias alone'),
  BAD_PROP_ORDER: say('the anchor stands in the wrong place', 'the anchor right before the value'),
  KEY_OVER_1024_CHARS: say('this key is longer than 1024 characters', 'a short key'),
  MULTILINE_IMPLICIT_KEY: say('no colon stands behind this key', 'a key, a colon and a space, then the value'),
  UNEXPECTED_TOKEN: say('this does not belong here', 'a key, a colon and a space, then the value'),
  IMPOSSIBLE: say('this line does not fit here', 'a key, a colon and a space, then the value'),
  NON_STRING_KEY: say('this key is not a word', 'a key of one or more words, then a colon'),
}

/** By a word in the parser's own message, where one code stands for several mistakes. */
const BY_MESSAGE: readonly (readonly [RegExp, Words])[] = [
  [/closing "quote/, say('the closing " of this text is missing', 'a text with " at both ends, or at neither')],
  [/closing 'quote/, say("the closing ' of this text is missing", "a text with ' at both ends, or at neither")],
  [/end with a \]/, say('the closing ] of this list is missing', 'a list such as [2440, 1220]')],
  [/end with a \}/, say('the closing } of this group is missing', 'a group such as {casters: caster 75}')],
  [/Missing , /, say('a comma is missing', 'commas between the values in brackets')],
  [
    /sufficiently indented/,
    say('what stands in brackets is not indented enough', 'its lines further right than the key'),
  ],
  [/followed by map values/, say('this line has no colon', 'a key, a colon and a space, then the value')],
  [/Missing space|space after/, say('a space is missing here', 'a space before a comment and after a comma')],
  [/Comments must be separated/, say('a space is missing before the comment', 'a space before the #')],
  [/indented with space|indent/i, INDENT],
]

/** A mistake that the YAML parser found, in plain words. */
export function yamlWords(code: ErrorCode, message: string): Words {
  const byMessage = code === 'MISSING_CHAR' || code === 'UNEXPECTED_TOKEN' || code === 'BAD_INDENT'
  const found = byMessage ? BY_MESSAGE.find(([pattern]) => pattern.test(message))?.[1] : undefined
  return found ?? WORDS[code] ?? say('this cannot be read', 'a key, a colon and a space, then the value')
}
