/**
 * Whose visit it is, what is held, the steps as buttons, and whether it is saved; it stays in
 * sight.
 */
import { Box, Button, Typography } from '@mui/material'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { otherLanguages, type Speaking } from '../../../shared/engine/visit/languages.ts'
import { languageName } from '../../../shared/engine/words/en/languages.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { gateInFew } from './gateWords.ts'
import { broad, narrow } from './narrow.ts'
import { numberOf, type Step } from './steps.ts'
import type { OpenDraft } from './useDraft.ts'

interface WalkHeadProps {
	open: OpenDraft
	/** Undefined while it cannot be worked out. */
	assessment: Assessment | undefined
	steps: readonly Step[]
	/** The step on screen. */
	step: Step
	signed: boolean
	goTo: (name: string, question?: string) => void
}
const cut = { minWidth: 0, overflow: 'hidden', textOverflow: 'ellipsis', whiteSpace: 'nowrap' }
const line = { display: 'flex', alignItems: 'center', columnGap: 1.5, minWidth: 0 }

export function WalkHead(props: WalkHeadProps) {
	return (
		<Box
			sx={{
				position: 'sticky',
				top: 0,
				zIndex: 3,
				height: 'var(--walk-head)',
				display: 'flex',
				flexDirection: 'column',
				justifyContent: 'center',
				bgcolor: 'background.default',
				borderBottom: 1,
				borderColor: 'divider',
				[broad]: { flexDirection: 'row', justifyContent: 'start', alignItems: 'center', gap: 2 },
				[narrow]: { position: 'static', height: 'auto' },
			}}
		>
			<Who {...props} />
			<Steps {...props} />
		</Box>
	)
}
/** One line whose parts keep their places: only names and reasons of any length are cut. */
function Who({ open, assessment, signed, goTo }: WalkHeadProps) {
	const { saved, amends } = open
	const { player, visitDate } = open.content.visit
	return (
		<Box
			sx={{
				...line,
				minHeight: 44,
				flex: '0 0 auto',
				[broad]: { flex: '1 1 0' },
				[narrow]: { flexWrap: 'wrap' },
			}}
		>
			<Typography
				variant="h2"
				component="p"
				title={fullName(player)}
				sx={{ ...cut, flex: '0 1 auto' }}
			>
				{fullName(player)}
			</Typography>
			<Typography variant="body2" color="text.secondary" sx={{ flex: 'none' }}>
				{ageYears(player.birthDate, visitDate)} y, {player.sex}
			</Typography>
			<Typography variant="body2" color="text.secondary" sx={{ flex: 'none' }}>
				visit {dayInWords(visitDate)}
			</Typography>
			<Languages player={player} />
			{amends && (
				<Typography
					variant="body2"
					title={amends.reason}
					sx={{ ...cut, flex: '0 1 auto', fontWeight: 600 }}
				>
					Amends the signed visit: {amends.reason}
				</Typography>
			)}
			<Gate assessment={assessment} goTo={goTo} signed={signed} />
			<Typography
				role="status"
				variant="body2"
				title={saved.says}
				color={saved.state === 'failed' ? 'error' : 'text.secondary'}
				sx={{
					...cut,
					flex: 'none',
					ml: 'auto',
					width: '9em',
					textAlign: 'right',
					fontVariantNumeric: 'tabular-nums',
					// what was not saved is read whole
					...(saved.state === 'failed' && { whiteSpace: 'normal', width: '22em' }),
				}}
			>
				{signed ? 'Signed' : saved.says}
			</Typography>
		</Box>
	)
}
/** In which languages to speak, where it is not that of the papers alone. */
function Languages({ player }: { player: Speaking }) {
	const { player: own, guardian } = otherLanguages(player)
	if (!own && !guardian) return null
	const theirs =
		guardian && guardian !== own ? `guardian prefers ${languageName(guardian)}` : undefined
	const says = [own && `prefers ${languageName(own)}`, theirs].filter(Boolean).join(', ')
	return (
		<Typography variant="body2" title={says} sx={{ ...cut, flex: '0 1 auto', fontWeight: 600 }}>
			{says}
		</Typography>
	)
}
/** Quiet where nothing is held; not to be missed where something is. It leads to the gate. */
function Gate({ assessment, goTo, signed }: Pick<WalkHeadProps, 'assessment' | 'goTo' | 'signed'>) {
	if (!assessment) return null
	const { state, says, whole } = gateInFew(assessment.prescription.gate)
	const held = state === 'held'
	return (
		<Button
			size="small"
			color={held ? 'error' : 'inherit'}
			variant={held ? 'contained' : 'text'}
			disabled={signed}
			aria-label={held ? `${whole}: to the gate` : `${says}: to the gate`}
			aria-keyshortcuts="Alt+G"
			title={whole || undefined}
			onClick={() => goTo('Decide', 'gate')}
			sx={{
				flex: '0 1 auto',
				minWidth: 'min(7rem, 100%)',
				px: held ? 1.5 : 1,
				...(!held && { fontWeight: 400, color: 'text.secondary' }),
			}}
		>
			<Box component="span" sx={cut}>
				{says}
			</Box>
		</Button>
	)
}
function Steps({ steps, step, signed, goTo }: WalkHeadProps) {
	return (
		<Box
			component="nav"
			aria-label="Steps"
			sx={{ display: 'flex', gap: 0.5, flex: 'none', [narrow]: { flexWrap: 'wrap' } }}
		>
			{steps.map(({ name }) => (
				<Button
					key={name}
					disabled={signed}
					variant={name === step.name ? 'contained' : 'text'}
					aria-current={name === step.name ? 'step' : undefined}
					aria-keyshortcuts={`Alt+${numberOf(name)}`}
					onClick={() => goTo(name)}
					sx={{ px: 1.25, minWidth: 0 }}
				>
					<Box component="span" aria-hidden sx={{ mr: 0.5, fontWeight: 400 }}>
						{numberOf(name)}
					</Box>
					{name}
				</Button>
			))}
		</Box>
	)
}
