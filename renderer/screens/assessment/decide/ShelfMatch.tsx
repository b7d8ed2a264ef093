/**
 * The shelf matched to this player: best first, each with its size, its margins, its reasons, and
 * the sole over the joints.
 */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useEffect, useId, useRef, useState } from 'react'
import type { Assessment, RankedModel } from '../../../../shared/engine/findings/assessment.ts'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import type { AssessedProps } from '../stepProps.ts'
import { ModelCard } from './ModelCard.tsx'
import { marksOf, mostModels } from './marks.ts'
import { StaleMarks } from './StaleMarks.tsx'

/** Models shown before the rest is asked for. */
const first = 5
const list = { m: 0, p: 0, listStyle: 'none', display: 'grid', gap: 1.5 } as const

interface ShelfMatchProps extends AssessedProps {
	shelf: Shelf | undefined
}
export function ShelfMatch(props: ShelfMatchProps) {
	const { draft, change, assessment, shelf } = props
	const id = useId()
	const [all, setAll] = useState(false)
	const section = useRef<HTMLElement>(null)
	// the button goes: the focus moves on to the first model that came
	useEffect(() => {
		if (all) section.current?.querySelectorAll<HTMLElement>('li h3[tabindex]')[first]?.focus()
	}, [all])
	if (!assessment) return null
	const { ranked } = assessment.footwear
	return (
		<Box component="section" ref={section} aria-labelledby={id}>
			<Typography variant="h2" id={id} sx={{ mb: 1 }}>
				On the shelf
			</Typography>
			<Stack spacing={2}>
				<StaleMarks draft={draft} change={change} ranked={ranked} />
				{!shelf && (
					<Typography color="text.secondary">
						The clinic has no shelf yet. <Link href="#/shelf">Open Shelf</Link> to add models or
						take in a table; they are then matched here.
					</Typography>
				)}
				{shelf && ranked.length === 0 && (
					<Typography color="text.secondary">
						Nothing is matched:{' '}
						{assessment.sizing.fitLengthMm === undefined
							? 'measure the length of both feet first.'
							: 'the shelf holds no model on sale.'}
					</Typography>
				)}
				{ranked.length > 0 && (
					<Ranked {...props} assessment={assessment} all={all} showAll={() => setAll(true)} />
				)}
			</Stack>
		</Box>
	)
}

interface RankedProps extends ShelfMatchProps {
	assessment: Assessment
	/** Whether all are shown, not the first few only. */
	all: boolean
	showAll: () => void
}
function Ranked({ draft, change, assessment, shelf, all, showAll }: RankedProps) {
	const { ranked } = assessment.footwear
	const passing = ranked.filter((model) => model.verdict !== 'unsuitable')
	const stopped = ranked.filter((model) => model.verdict === 'unsuitable')
	const marked = marksOf(draft, 'model').length
	const full = marked >= mostModels
	const shown = all ? passing : passing.slice(0, first)
	const hidden = ranked.length - shown.length - (all ? stopped.length : 0)
	const card = (model: RankedModel, place: number) => (
		<ModelCard
			key={model.id}
			ranked={model}
			place={place}
			model={shelf?.models.find((known) => known.id === model.id)}
			full={full}
			draft={draft}
			change={change}
			assessment={assessment}
		/>
	)
	return (
		<>
			<Typography>
				{passing.length} of {ranked.length} models pass,{' '}
				{passing.filter((model) => model.verdict === 'with-changes').length} of them with changes.
				The number behind a reason is its share in the order: a smaller sum stands first. It is no
				measure of quality. Mark up to {mostModels} to try; the report prints them.
			</Typography>
			<Typography role="status" sx={{ fontWeight: 600 }}>
				{marked} of {mostModels} marked to try.{full ? ' Take one off to mark another.' : ''}
			</Typography>
			<Box component="ol" aria-label="Models that pass" sx={list}>
				{shown.map((model, index) => card(model, index + 1))}
			</Box>
			{passing.length === 0 && (
				<Alert severity="warning">
					No model of the shelf passes for this player. The reasons stand below.
				</Alert>
			)}
			{(all || passing.length === 0) && stopped.length > 0 && (
				<>
					<Typography variant="h3">Stopped</Typography>
					<Box component="ul" aria-label="Models that are stopped" sx={list}>
						{stopped.map((model) => card(model, 0))}
					</Box>
				</>
			)}
			{hidden > 0 && passing.length > 0 && (
				<Button variant="outlined" sx={{ alignSelf: 'flex-start' }} onClick={showAll}>
					Show all {ranked.length}, with the {stopped.length} stopped
				</Button>
			)}
		</>
	)
}
