/**
 * Models of the shelf for the pair of one role: those proposed, then the whole shelf on demand, each
 * with its size, its margins, its reasons and the sole over the joints. At most three are to try.
 */
import { Alert, Box, Link, Stack, Typography } from '@mui/material'
import type { RankedModel } from '../../../../shared/engine/findings/assessment.ts'
import { present } from '../../../../shared/engine/plain/present.ts'
import { Disclosure } from '../../../parts/Disclosure.tsx'
import { changedIn, changeFields } from './answering.ts'
import { ModelCard } from './ModelCard.tsx'
import { mostModels, proposedFields } from './proposedFields.ts'
import { titleOfQuestion } from './questionTitles.ts'
import type { AskedProps } from './stepTypes.ts'

const list = { m: 0, p: 0, listStyle: 'none', display: 'grid', gap: 1.5 } as const

export function Models(props: AskedProps) {
	const { assessment, question, draft, shelf, shelfTrouble } = props
	const { ranked } = assessment.footwear
	const chosen =
		changedIn(draft.decisions, question).models ?? proposedFields(assessment, question).models ?? []
	if (shelfTrouble)
		return (
			<Alert severity="warning">
				The shelf did not open, so no model is matched. {shelfTrouble}
			</Alert>
		)
	if (!shelf)
		return (
			<Typography color="text.secondary">
				The clinic has no shelf yet. <Link href="#/shelf">Open Shelf</Link> to add models or take in
				a table; they are then matched here.
			</Typography>
		)
	if (ranked.length === 0)
		return (
			<Typography color="text.secondary">
				Nothing is matched:{' '}
				{assessment.sizing.fitLengthMm === undefined
					? 'measure the length of both feet first.'
					: 'the shelf holds no model on sale for it.'}
			</Typography>
		)
	return <Matched {...props} ranked={ranked} chosen={chosen} />
}

interface MatchedProps extends AskedProps {
	ranked: readonly RankedModel[]
	/** Ids of the models to try. */
	chosen: readonly string[]
}
function Matched(props: MatchedProps) {
	const { question, ranked, chosen } = props
	const passing = ranked.filter(({ verdict }) => verdict !== 'unsuitable')
	const stopped = ranked.filter(({ verdict }) => verdict === 'unsuitable')
	const toTry = chosen.flatMap((id) => ranked.filter((model) => model.id === id))
	const card = (model: RankedModel) => <Card key={model.id} {...props} model={model} />
	return (
		<Box component="section" aria-label={`On the shelf: ${titleOfQuestion(question.id)}`}>
			<Stack spacing={1.5}>
				<Typography sx={{ fontWeight: 600 }}>
					{toTry.length} of {mostModels} to try
					{toTry.length >= mostModels ? '. Take one off to choose another.' : ''}
				</Typography>
				<Box component="ul" aria-label="Models to try" sx={list}>
					{toTry.map(card)}
				</Box>
				<Disclosure
					label={`The whole shelf (${ranked.length})`}
					name={`The whole shelf for ${titleOfQuestion(question.id)} (${ranked.length})`}
				>
					<Stack spacing={1.5}>
						<Typography variant="body2">
							{passing.length} of {ranked.length} models pass. The number behind a reason is its
							share in the order: a smaller sum stands first. It is no measure of quality.
						</Typography>
						<Box component="ol" aria-label="Models that pass" sx={list}>
							{passing.map((model, at) => (
								<Card key={model.id} {...props} model={model} place={at + 1} />
							))}
						</Box>
						{passing.length === 0 && (
							<Alert severity="warning">
								No model of the shelf passes for this player. The reasons stand below.
							</Alert>
						)}
						{stopped.length > 0 && <Typography variant="h3">Stopped</Typography>}
						<Box component="ul" aria-label="Models that are stopped" sx={list}>
							{stopped.map(card)}
						</Box>
					</Stack>
				</Disclosure>
			</Stack>
		</Box>
	)
}
function Card(props: MatchedProps & { model: RankedModel; place?: number }) {
	const { question, assessment, draft, change, shelf, chosen, model, place } = props
	const put = (on: boolean) =>
		change((now) =>
			changeFields(now, question, {
				models: on ? [...chosen, model.id] : chosen.filter((id) => id !== model.id),
			}),
		)
	return (
		<ModelCard
			ranked={model}
			{...present({ place })}
			model={shelf?.models.find((known) => known.id === model.id)}
			marked={chosen.includes(model.id)}
			full={chosen.length >= mostModels}
			mark={put}
			visit={draft.visit}
			assessment={assessment}
		/>
	)
}
