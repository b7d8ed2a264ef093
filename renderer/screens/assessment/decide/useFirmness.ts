/** How firmly proposals stand within measuring error, worked out once the entries have settled. */
import { useEffect, useState } from 'react'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import { type Firm, firmness } from '../../../../shared/engine/firmness/firmness.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'

/** The trials take a moment: they wait until the questions are on the screen. */
const waitMs = 250
/** By the id of the question; those that are not tried have none. */
export type Firmnesses = Readonly<Partial<Record<string, Firm>>>
const none: Firmnesses = {}

/** @param visit the visit of the assessment, @param earlier those before it, oldest first */
export function useFirmness(
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
): Firmnesses {
	const [found, setFound] = useState<{ of: Assessment; firm: Firmnesses }>()
	useEffect(() => {
		const timer = setTimeout(
			() =>
				setFound({ of: assessment, firm: firmness(visit, earlier, assessment, clinicProtocol) }),
			waitMs,
		)
		return () => clearTimeout(timer)
	}, [visit, earlier, assessment])
	if (found?.of !== assessment) return none
	// where no length is proposed, none stands near a limit
	const { size: _, ...others } = found.firm
	return assessment.sizing.usableForBuying === false ? others : found.firm
}
