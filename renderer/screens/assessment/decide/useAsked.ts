/** The questions as they are put now: what the answers of others turned is said and asked again. */
import { useMemo } from 'react'
import type { DraftContent } from '../../../../shared/contract.ts'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { AskedNow } from '../../../../shared/engine/prescription/in-turn.ts'
import { namedIn } from '../../../../shared/engine/prescription/lines.ts'
import { questionsNow } from '../../../../shared/engine/prescription/settled.ts'

export function useAsked(
	{ visit, decisions }: DraftContent,
	assessment: Assessment,
): readonly AskedNow[] {
	const named = useMemo(() => namedIn(visit, assessment), [visit, assessment])
	return useMemo(() => questionsNow(assessment, decisions, named), [assessment, decisions, named])
}
