/** The guided assessment: steps of measures, findings beside them, the draft saved as it grows. */
import { Alert, Box, Button, Paper, Typography } from '@mui/material'
import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { assess } from '../../../shared/assess.ts'
import { ageYears } from '../../../shared/visit/age.ts'
import type { Shelf } from '../../../shared/visit/shelf.ts'
import { call, wordsOf } from '../../host.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { Decide } from './Decide.tsx'
import { Findings } from './Findings.tsx'
import { Flags } from './Flags.tsx'
import { Conditions, Pairs, Surfaces } from './Lists.tsx'
import { readPath } from './path.ts'
import { Sign } from './Sign.tsx'
import type { StepProps } from './stepProps.ts'
import { steps } from './steps.ts'
import { type OpenDraft, useDraft } from './useDraft.ts'

export function AssessmentScreen({ playerId }: { playerId: string }) {
	const { open, trouble } = useDraft(playerId)
	if (!open) return trouble ? <Alert severity="error">{trouble}</Alert> : <Typography role="status">Opening the visit.</Typography>
	return <Walk playerId={playerId} open={open} />
}

function Walk({ playerId, open }: { playerId: string; open: OpenDraft }) {
	const { content: draft, earlier, draftId, saved, change, saveNow, closed } = open
	const [signed, setSigned] = useState(false)
	const heading = useRef<HTMLHeadingElement>(null)
	const [shelf, setShelf] = useState<Shelf>()
	const [shelfTrouble, setShelfTrouble] = useState('')
	useEffect(() => { call('shelf.get', {}).then((held) => setShelf(held.shelf), (error) => setShelfTrouble(wordsOf(error))) }, [])
	const visit = useDeferredValue(draft.visit)
	const { assessment, trouble } = useMemo(() => {
		try {
			return { assessment: assess(visit, earlier, undefined, shelf), trouble: '' }
		} catch {
			return { assessment: undefined, trouble: 'The findings cannot be worked out from these entries. Nothing entered is lost; correct the last entry.' }
		}
	}, [visit, earlier, shelf])
	const { player, visitDate } = draft.visit
	const age = ageYears(player.birthDate, visitDate)
	const shown = steps.filter((step) => step.name !== 'Growth' || age < 18)
	const step = shown.find((one) => one.name === draft.step) ?? shown[0]!
	const at = shown.indexOf(step)
	const goTo = (name: string) => {
		change((now) => ({ ...now, step: name }))
		void saveNow().catch(() => {})
		requestAnimationFrame(() => heading.current?.focus())
	}
	const missing = assessment?.missing.filter(({ path }) => step.asks.some((prefix) => path === prefix || path.startsWith(`${prefix}.`))) ?? []
	const last = earlier.filter((one) => one.visitDate < visitDate).toSorted((a, b) => (a.visitDate < b.visitDate ? 1 : -1))[0]
	const props: StepProps = { draft, change, assessment, earlier, draftId, playerId, saveNow, goTo }
	const wide = step.name === 'Decide' || step.name === 'Sign and report'
	return (
		<Box>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'baseline', mb: 1 }}>
				<Typography variant="h2" component="p">{player.givenName} {player.familyName}</Typography>
				<Typography color="text.secondary">{age} years, {player.sex}, visit of {visitDate}</Typography>
				<Typography role="status" color={saved.startsWith('Not') ? 'error' : 'text.secondary'} sx={{ ml: 'auto' }}>{signed ? 'Signed' : saved}</Typography>
			</Box>
			<Box component="nav" aria-label="Steps" sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.5, mb: 2 }}>
				{shown.map((one) => <Button key={one.name} disabled={signed} variant={one === step ? 'contained' : 'text'} aria-current={one === step ? 'step' : undefined} onClick={() => goTo(one.name)}>{one.name}</Button>)}
			</Box>
			<Box sx={{ display: 'grid', gridTemplateColumns: wide ? '1fr' : 'minmax(0, 1.8fr) minmax(300px, 1fr)', gap: 3, alignItems: 'start' }}>
				<Box sx={{ display: 'grid', gap: 2 }} onKeyDown={wide ? undefined : walkByEnter}>
					<Typography variant="h1" ref={heading} tabIndex={-1}>{step.name}</Typography>
					{step.asks.length > 0 ? <Typography role="status" color="text.secondary">{missing.length === 0 ? 'Nothing is missing on this step.' : `Still missing: ${missing.map((one) => one.says).join('; ')}.`}</Typography> : null}
					{step.groups.map((group) => (
						<Paper key={group.heading} variant="outlined" sx={{ p: 2, display: 'grid', gap: 0.5 }}>
							<Box sx={{ display: 'grid', gridTemplateColumns: 'minmax(180px, 1.1fr) 1fr 1fr', columnGap: 2, mb: 1 }}>
								<Typography variant="h2">{group.heading}</Typography>
								{group.fields.some((row) => row.paths.length === 2) ? (
									<>
										<Typography variant="h3" component="p">Left</Typography>
										<Typography variant="h3" component="p">Right</Typography>
									</>
								) : null}
							</Box>
							{group.fields.map((row) => <FieldRow key={row.paths[0]} paths={row.paths} hint={row.hint} draft={draft} change={change} before={last ? row.paths.map((path) => readPath(last, path)) : []} />)}
						</Paper>
					))}
					{step.name === 'Player and play' ? (
						<>
							<Paper variant="outlined" sx={{ p: 2 }}>
								<Typography variant="h2">Surfaces</Typography>
								<Surfaces draft={draft} change={change} />
							</Paper>
							<Paper variant="outlined" sx={{ p: 2 }}>
								<Typography variant="h2">Conditions</Typography>
								<Conditions draft={draft} change={change} />
							</Paper>
							<Paper variant="outlined" sx={{ p: 2 }}>
								<Typography variant="h2">Pairs the player owns</Typography>
								<Pairs draft={draft} change={change} />
							</Paper>
						</>
					) : null}
					{step.name === 'Flags' ? <Flags {...props} /> : null}
					{step.name === 'Decide' ? <Decide {...props} shelf={shelf} shelfTrouble={shelfTrouble} /> : null}
					{step.name === 'Sign and report' ? <Sign {...props} onSigned={() => { closed(); setSigned(true) }} /> : null}
					{at < shown.length - 1 ? <Box><Button variant="contained" size="large" onClick={() => goTo(shown[at + 1]!.name)}>Next step</Button></Box> : null}
				</Box>
				{wide ? null : <Findings assessment={assessment} trouble={trouble} topics={step.topics} visit={visit} earlier={earlier} />}
			</Box>
		</Box>
	)
}
