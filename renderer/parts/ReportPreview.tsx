/** The player report as it would print now; follows each change without holding up typing. */
import { Box } from '@mui/material'
import { type SyntheticEvent, useDeferredValue, useId, useMemo, useState } from 'react'
import type { DraftContent } from '../../shared/contract.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import type { Clinic } from '../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { unnamedClinic } from '../../shared/engine/report/kinds.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { readabilityOf } from '../../shared/engine/report/readability.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { useHost } from '../query.ts'
import { clinicProtocol } from './clinicProtocol.ts'
import { DocumentView } from './DocumentView.tsx'

interface PreviewProps {
	draft: DraftContent
	assessment: Assessment | undefined
	earlier: readonly Visit[]
}
interface Composed {
	document?: LwDocument
	/** why it cannot be composed */
	trouble?: string
}
function compose(
	{ visit, decisions }: DraftContent,
	assessment: Assessment,
	earlier: readonly Visit[],
	clinic: Clinic,
): Composed {
	try {
		return {
			document: playerReport({
				visit,
				earlier,
				assessment,
				decisions,
				clinic,
				signedAt: undefined,
				draft: true,
				protocol: clinicProtocol,
			}),
		}
	} catch (error) {
		return { trouble: error instanceof Error ? error.message : String(error) }
	}
}
/** How hard it is to read. */
function Gauge({ document }: { document: LwDocument }) {
	const t = speakFrom()
	const gauge = useMemo(() => readabilityOf(document), [document])
	if (!gauge) return null
	return (
		<Box component="p" sx={{ color: 'text.secondary', fontSize: '0.85rem', mt: 0 }}>
			{t('preview.grade', {
				grade: Math.max(0, gauge.grade).toFixed(1),
				ease: gauge.ease.toFixed(0),
				smog: gauge.smog.toFixed(1),
			})}
		</Box>
	)
}
/** Composed only while it is unfolded. */
function Composing({
	draft,
	assessment,
	earlier,
	clinic,
	labelledBy,
}: PreviewProps & { clinic: Clinic; labelledBy: string }) {
	const content = useDeferredValue(draft)
	const { document, trouble } = useMemo(
		() => (assessment ? compose(content, assessment, earlier, clinic) : {}),
		[content, assessment, earlier, clinic],
	)
	return (
		<>
			{trouble ? <p role="alert">{trouble}</p> : null}
			{document ? (
				<>
					<Gauge document={document} />
					<Box role="region" aria-labelledby={labelledBy} tabIndex={0}>
						<DocumentView document={document} />
					</Box>
				</>
			) : null}
		</>
	)
}
export function ReportPreview(props: PreviewProps) {
	const t = speakFrom()
	const id = useId()
	const clinic = useHost('clinic.get', {}).value ?? unnamedClinic
	const [open, setOpen] = useState(false)
	return (
		<Box
			component="details"
			data-preview=""
			onToggle={(event: SyntheticEvent<HTMLDetailsElement>) => setOpen(event.currentTarget.open)}
			sx={{
				position: { lg: 'sticky' },
				top: 8,
				maxHeight: { lg: 'calc(100vh - 16px)' },
				overflow: 'auto',
			}}
		>
			<Box
				component="summary"
				id={id}
				aria-keyshortcuts="Alt+P"
				sx={{
					minHeight: 44,
					display: 'list-item',
					py: 1,
					px: 0.5,
					'&:focus-visible': { outlineOffset: '-3px' },
					cursor: 'pointer',
					fontWeight: 600,
				}}
			>
				{t('preview.title')}
			</Box>
			{open ? <Composing {...props} clinic={clinic} labelledBy={id} /> : null}
		</Box>
	)
}
