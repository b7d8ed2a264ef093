/**
 * Page one of the player's report as it would print now, beside Decide; it follows each change
 * without holding up typing. Where there is no room it is folded; the pages that follow are one key
 * away.
 */
import { Box, Typography } from '@mui/material'
import {
	type ReactNode,
	type SyntheticEvent,
	useDeferredValue,
	useEffect,
	useId,
	useMemo,
	useRef,
	useState,
} from 'react'
import type { DraftContent } from '../../shared/contract.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import type { Clinic } from '../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import type { ReportInput } from '../../shared/engine/report/inputs.ts'
import { unnamedClinic } from '../../shared/engine/report/kinds.ts'
import { pageOne } from '../../shared/engine/report/page-one.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { readabilityOf } from '../../shared/engine/report/readability.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { useHost } from '../query.ts'
import { DocumentView } from './DocumentView.tsx'
import { composedOf, draftInput } from './draftPages.ts'
import { spokenOnly } from './spokenOnly.ts'

interface PreviewProps {
	draft: DraftContent
	assessment: Assessment | undefined
	earlier: readonly Visit[]
}
/** How hard it is to read. */
function Gauge({ document }: { document: LwDocument }) {
	const t = speakFrom()
	const gauge = useMemo(() => readabilityOf(document), [document])
	if (!gauge) return null
	return (
		<Box component="p" sx={{ color: 'text.secondary', fontSize: '0.85rem', m: 0, mb: 0.5 }}>
			{t('preview.grade', { grade: Math.max(0, gauge.grade).toFixed(1) })}
		</Box>
	)
}
interface ComposingProps extends PreviewProps {
	clinic: Clinic
	compose: (input: ReportInput) => LwDocument
	children: (document: LwDocument) => ReactNode
}
/** Composed only while it is seen. */
function Composing({ draft, assessment, earlier, clinic, compose, children }: ComposingProps) {
	const content = useDeferredValue(draft)
	const { document, trouble } = useMemo(
		() =>
			assessment
				? composedOf(() => compose(draftInput({ draft: content, assessment, earlier, clinic })))
				: { document: undefined, trouble: undefined },
		[content, assessment, earlier, clinic, compose],
	)
	return (
		<>
			{trouble ? <p role="alert">{trouble}</p> : null}
			{document ? children(document) : null}
		</>
	)
}
interface FoldProps {
	title: string
	children: (labelledBy: string) => ReactNode
}
/** What Alt+P opens and closes; composed only while it is open. */
function Fold({ title, children }: FoldProps) {
	const id = useId()
	const [open, setOpen] = useState(false)
	const box = useRef<HTMLDetailsElement>(null)
	// beside the questions it stands under page one, in a box that scrolls by itself
	useEffect(() => {
		const holder = box.current?.parentElement
		if (open && holder && box.current) holder.scrollTop = box.current.offsetTop - holder.offsetTop
	}, [open])
	return (
		<Box
			component="details"
			data-preview=""
			ref={box}
			onToggle={(event: SyntheticEvent<HTMLDetailsElement>) => setOpen(event.currentTarget.open)}
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
				{title}
			</Box>
			{open ? children(id) : null}
		</Box>
	)
}
/** @param beside there is room for it beside the questions: page one is always in sight */
export function ReportPreview({ beside, ...props }: PreviewProps & { beside: boolean }) {
	const t = speakFrom()
	const clinic = useHost('clinic.get', {}).value ?? unnamedClinic
	const composing = { ...props, clinic }
	return (
		<Box
			// what scrolls has the focus: the page within may be longer than can be seen
			{...(beside && { role: 'group', 'aria-label': t('preview.pageOne'), tabIndex: 0 })}
			sx={
				beside
					? {
							position: 'sticky',
							top: 'calc(var(--walk-head, 0rem) + 8px)',
							maxHeight: 'calc(100vh - var(--walk-head, 0rem) - var(--walk-foot, 0rem) - 16px)',
							overflow: 'auto',
							'&:focus-visible': { outlineOffset: '-3px' },
						}
					: {}
			}
		>
			{beside ? (
				<>
					<PageOne {...composing} />
					<Fold title={t('preview.following')}>
						{(labelledBy) => (
							<Composing {...composing} compose={playerReport}>
								{(document) => (
									<Box role="region" aria-labelledby={labelledBy}>
										<DocumentView document={document} following />
									</Box>
								)}
							</Composing>
						)}
					</Fold>
				</>
			) : (
				<Fold title={t('preview.title')}>
					{(labelledBy) => (
						<Composing {...composing} compose={playerReport}>
							{(document) => (
								<>
									<Gauge document={document} />
									<Box role="region" aria-labelledby={labelledBy} tabIndex={0}>
										<DocumentView document={document} />
									</Box>
								</>
							)}
						</Composing>
					)}
				</Fold>
			)}
		</Box>
	)
}
/** Always in sight where there is room for it. */
function PageOne(props: PreviewProps & { clinic: Clinic }) {
	const t = speakFrom()
	const id = useId()
	return (
		<>
			<Typography variant="h2" id={id} sx={spokenOnly}>
				{t('preview.pageOne')}
			</Typography>
			<Composing {...props} compose={pageOne}>
				{(document) => (
					<>
						<Gauge document={document} />
						<Box role="region" aria-labelledby={id}>
							<DocumentView document={document} />
						</Box>
					</>
				)}
			</Composing>
		</>
	)
}
