/** Referrals that nobody has heard from: what was asked of whom, whom to ring, and what came of it. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { roleWords, stateWords } from '../../../shared/desk/outbox/item.ts'
import type { NotHeardView } from '../../../shared/desk/recall/calls.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { change, useHost, useHostAction } from '../../query.ts'
import { FollowingUp } from './FollowingUp.tsx'

export function Referrals({ role }: { role: PersonRole }) {
	const answer = useHost('recall.referrals', {})
	const { lead } = may(role)
	return (
		<Answered of={answer} what="the referrals">
			{({ today, referrals, heard, troubles }) => (
				<Stack spacing={2.5}>
					{troubles.map((trouble) => (
						<Alert key={trouble} severity="warning">
							{trouble} A referral of it may be missing here.
						</Alert>
					))}
					{referrals.length === 0 && (
						<Empty says="Every referral is heard from. A visit that asks for imaging, same-day or emergency care stands here from the next working day on, until what came of it is written." />
					)}
					{referrals.map((referral) => (
						<Referral key={referral.playerId} {...{ referral, today }} leads={lead} />
					))}
					{heard.length > 0 && <Heard heard={heard} leads={lead} />}
				</Stack>
			)}
		</Answered>
	)
}

type Fact = [what: string, says: readonly string[]]
const factsOf = (referral: NotHeardView): Fact[] => [
	['Asked', [`${referral.asked}, on ${dayInWords(referral.since)}`]],
	['Because of', referral.signs.filter((says) => says !== '')],
	['Done', referral.done],
	['Question', referral.question],
	[
		'Letter',
		referral.letters.map(
			({ to, state, at }) => `${to}: ${stateWords[state].toLowerCase()}, ${dayOfMoment(at)}`,
		),
	],
	['Seen again by', referral.review ? [dayInWords(referral.review)] : []],
	[
		'Ring',
		referral.phones.length > 0
			? referral.phones.map(({ phone, name, role }) => `${phone} ${name}, ${roleWords[role]}`)
			: ['No telephone number on record. Add one on the page of the player or among the contacts.'],
	],
	[
		'Tried',
		referral.tries.map(
			({ says, again, by, at }) =>
				`${dayOfMoment(at)}, ${by}: ${says}${again ? `; again on ${dayInWords(again)}` : ''}`,
		),
	],
]
interface ReferralProps {
	referral: NotHeardView
	today: string
	leads: boolean
}
function Referral({ referral, today, leads }: ReferralProps) {
	const [writing, setWriting] = useState<'outcome' | 'try'>()
	return (
		<Panel title={referral.name} named beside={<Ways referral={referral} />}>
			<Box
				component="dl"
				sx={{
					display: 'grid',
					gridTemplateColumns: 'minmax(6rem, max-content) minmax(0, 1fr)',
					columnGap: 2,
					rowGap: 0.5,
					m: 0,
				}}
			>
				{factsOf(referral)
					.filter(([, says]) => says.length > 0)
					.map(([what, says]) => (
						<Box key={what} sx={{ display: 'contents' }}>
							<Typography component="dt" color="textSecondary">
								{what}
							</Typography>
							<Box component="dd" sx={{ m: 0 }}>
								{says.map((line) => (
									<Typography key={line} sx={what === 'Asked' ? { fontWeight: 600 } : {}}>
										{line}
									</Typography>
								))}
							</Box>
						</Box>
					))}
			</Box>
			{leads && writing === undefined && (
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					<Button
						variant="contained"
						aria-label={`Write what came of it: ${referral.name}`}
						onClick={() => setWriting('outcome')}
					>
						Write what came of it
					</Button>
					<Button
						variant="outlined"
						aria-label={`Note a try: ${referral.name}`}
						onClick={() => setWriting('try')}
					>
						Note a try
					</Button>
				</Box>
			)}
			{writing && (
				<FollowingUp {...{ referral, today }} what={writing} close={() => setWriting(undefined)} />
			)}
		</Panel>
	)
}
const Ways = ({ referral: { playerId, name, birthDate } }: { referral: NotHeardView }) => (
	<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'baseline', columnGap: 2 }}>
		<Typography component="span" variant="body2" color="textSecondary">
			born {dayInWords(birthDate)}
		</Typography>
		<Link
			href={`#/players/${playerId}`}
			aria-label={`Open the player, ${name}`}
			sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, fontWeight: 600 }}
		>
			Open the player
		</Link>
	</Box>
)

type HeardLine = OutputOf<'recall.referrals'>['heard'][number]
function Heard({ heard, leads }: { heard: readonly HeardLine[]; leads: boolean }) {
	return (
		<Panel
			title="Heard last"
			hint="Written here. One that was written in error is taken back, and stands again."
		>
			<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
				{heard.map((line) => (
					<HeardOf key={line.followUpId} line={line} leads={leads} />
				))}
			</Box>
		</Panel>
	)
}
function HeardOf({ line, leads }: { line: HeardLine; leads: boolean }) {
	const [isTaking, setIsTaking] = useState(false)
	const [why, setWhy] = useState('')
	const action = useHostAction()
	const { followUpId, playerId, visitIds } = line
	const takeBack = () =>
		action.run(async () => {
			const entry = { what: 'taken-back' as const, of: followUpId, why }
			await change('recall.followUp', { playerId, visitIds, entry })
			return ''
		})
	return (
		<Box component="li" sx={{ borderBottom: 1, borderColor: 'divider', py: 1 }}>
			<Typography>
				<strong>{line.name}</strong> {line.says}{' '}
				<Box component="span" sx={{ color: 'text.secondary' }}>
					{line.by}, {dayOfMoment(line.at)}
				</Box>
			</Typography>
			{leads && !isTaking && (
				<Button
					aria-label={`Take back what came of it: ${line.name}`}
					onClick={() => setIsTaking(true)}
				>
					Take back
				</Button>
			)}
			{isTaking && (
				<Form submit={takeBack} sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, mt: 1 }}>
					<Box sx={{ flexGrow: 1, maxWidth: 520 }}>
						<Field label="Why it is taken back" value={why} set={setWhy} focus />
					</Box>
					<Button type="submit" variant="outlined" disabled={action.busy || why.trim().length < 3}>
						Take it back
					</Button>
					<Button onClick={() => setIsTaking(false)}>Leave it</Button>
				</Form>
			)}
			<Trouble says={action.says} />
		</Box>
	)
}
