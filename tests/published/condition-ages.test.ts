/** The ages at which growing conditions are usually seen, against what is published of them. */
import { describe, expect, it } from 'vitest'
import { ageDoubt } from '../../shared/engine/conditions/ages.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Condition } from '../../shared/engine/visit/terms.ts'

const protocol = openProtocol()
const usual = (condition: Condition, ageYears: number) =>
	ageDoubt(condition, ageYears, protocol) === undefined

describe('usual ages of a condition', () => {
	// Belikan et al. 2022, J Orthop Surg Res, doi 10.1186/s13018-022-02979-9 (read): growth plate
	// of the heel appears at 7 to 9 years, typical 8 to 15; academy mean 11.8, deviation 2.1
	it.each([7, 8, 9.7, 11.8, 13.9, 15])('growing heel at %s years', (ageYears) =>
		expect(usual('calcaneal-apophysitis', ageYears)).toBe(true),
	)
	// James et al. 2016, Br J Sports Med 50:1268 (read): trial of 8 to 14 years; Alfaro-Santafe et
	// al. 2021, Children 8:963 (read): 9 to 12 years
	it.each([8, 9, 12, 14])('trials of the growing heel took players of %s years', (ageYears) =>
		expect(usual('calcaneal-apophysitis', ageYears)).toBe(true),
	)
	it.each([6, 16, 30])('growing heel at %s years is asked about', (ageYears) =>
		expect(usual('calcaneal-apophysitis', ageYears)).toBe(false),
	)
	// podiatry pages (read second-hand): seen from about 10 (girls) or 12 (boys), fused about a year
	// later; other pages 8 to 13
	it.each([8, 10, 12, 13])('growing fifth metatarsal at %s years', (ageYears) =>
		expect(usual('fifth-metatarsal-apophysitis', ageYears)).toBe(true),
	)
	// a page of low quality (read second-hand): girls 8 to 12, boys 12 to 15
	it.each([8, 12, 15])('growing pain below the knee at %s years', (ageYears) =>
		expect(usual('tibial-tubercle-apophysitis', ageYears)).toBe(true),
	)
	// patient pages of orthopaedic services (read second-hand): most often from 8 to 16 years; the
	// bones stay joined, so that there is no upper end
	it.each([8, 16, 40])('tarsal coalition at %s years', (ageYears) =>
		expect(usual('tarsal-coalition', ageYears)).toBe(true),
	)
})
