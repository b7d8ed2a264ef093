import { describe, expect, it } from 'vitest'
import { need } from '../../shared/engine/plain/need.ts'
import { present } from '../../shared/engine/plain/present.ts'

describe('present', () => {
	it('leaves out what is undefined and keeps every other value, zero and empty among them', () => {
		const given = { length: 0, name: '', none: undefined, no: false, list: [], nothing: null }
		expect(Object.keys(present(given))).toEqual(['length', 'name', 'no', 'list', 'nothing'])
		expect(Object.keys(given)).toContain('none')
	})
	it('looks at its own level only', () => {
		expect(Object.keys(present({ inner: { none: undefined } }).inner)).toEqual(['none'])
	})
})
describe('need', () => {
	it('gives back what is there, zero and empty among it', () => {
		expect([need(0, 'a count'), need('', 'a name'), need(false, 'a flag')]).toEqual([0, '', false])
	})
	it('names what is missing', () => {
		expect(() => need(undefined, 'the first foot')).toThrow('the first foot is missing')
		expect(() => need(null, 'the record')).toThrow('the record is missing')
	})
})
