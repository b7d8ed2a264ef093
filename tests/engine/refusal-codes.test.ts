/** Reasons for refusals are codes: each is used, each once, and none is made up on the way. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { refusalCodes } from '../../shared/desk/workplace/refusal-codes.table.ts'

const electron = new URL('../../electron', import.meta.url).pathname
const source = readdirSync(electron, { recursive: true, encoding: 'utf8' })
	.filter((file) => file.endsWith('.ts'))
	.map((file) => readFileSync(join(electron, file), 'utf8'))
	.join('\n')

it('each code stands once, in order, and names its room', () => {
	expect([...refusalCodes].sort()).toEqual([...refusalCodes])
	expect(new Set(refusalCodes).size).toBe(refusalCodes.length)
	for (const code of refusalCodes) expect(code).toMatch(/^[a-z]+\.[a-z]+(-[a-z]+)*$/)
})
it.each(refusalCodes)('%s is a reason that the host gives', (code) => {
	expect(source).toContain(`'${code}'`)
})
