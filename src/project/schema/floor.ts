import * as z from 'zod'
import { group, kind, length, moduleName, optional, required } from './parts.ts'

/** Where a row stands on the floor; its words are those of someone in front of the module that it stands against. */
export const standsSchema = group(
  {
    against: required(moduleName, 'A module of an earlier row. All words here are as seen by someone in front of it.'),
    'at its': required(
      z.enum(['left', 'right', 'front', 'back'], kind('side of a module')),
      'The side of that module that the row touches: left, right, front or back.',
    ),
    'fronts look': optional(
      z.enum(['forward', 'left', 'right', 'back'], kind('way of fronts')),
      "Which way the row's own fronts look: forward, as that module's do, left, right or back. Default forward.",
    ),
    'line up': optional(
      z.enum(['left', 'right', 'front', 'back', 'middle'], kind('line up')),
      'Which ends are flush: front, back or middle at its left and right; left, right or middle at its front and back. Default front, or left.',
    ),
    shift: optional(length, 'From there toward its back, or toward its right; less than 0 the other way. Default 0.'),
    gap: optional(length, 'Left between the row and that module. Default 0.'),
  },
  'stands',
)

export const levelSchema = z.enum(['floors', 'tops'], kind('level'))
