/** Visits and values that the checks of the growth room share. */
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

export const sized = (
	ageYears: number,
	statureCm: number,
	sittingHeightCm: number,
	massKg: number,
) => ({
	ageYears,
	statureCm,
	sittingHeightCm,
	massKg,
})
export const visit = (
	more: Partial<Visit> & { sex?: 'male' | 'female'; birthDate?: string } = {},
): Visit => {
	const { sex = 'male', birthDate = '2013-05-02', ...rest } = more
	return {
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate, sex },
		visitDate: '2027-01-20',
		...rest,
	}
}
export const protocol = openProtocol()
