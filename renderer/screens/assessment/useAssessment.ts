/** The engine's answer to the draft, worked out after each entry but never before the typing. */
import { useDeferredValue, useMemo } from 'react'
import { assess } from '../../../shared/engine/assess.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

const cannot =
	'The findings cannot be worked out from these entries. Nothing entered is lost; ' +
	'correct the last entry.'

/** @returns `visit` is the visit that was assessed; `trouble` says why there is no assessment */
export function useAssessment(
	typed: Visit,
	earlier: readonly Visit[],
	protocol: ProtocolFile,
	shelf: Shelf | undefined,
) {
	const visit = useDeferredValue(typed)
	const answer = useMemo(() => {
		try {
			return { assessment: assess(visit, earlier, protocol, shelf), trouble: '' }
		} catch {
			return { assessment: undefined, trouble: cannot }
		}
	}, [visit, earlier, shelf, protocol])
	return { visit, ...answer }
}
