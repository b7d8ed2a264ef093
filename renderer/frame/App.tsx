/** The workstation: the frame, and in it the gate or the page of the address. */
import { Typography } from '@mui/material'
import { lazy, useEffect, useState } from 'react'
import { useHashLocation } from 'wouter/use-hash-location'
import { Frame } from '../parts/Frame.tsx'
import { loadLook } from '../parts/look.ts'
import { Palette } from '../parts/Palette.tsx'
import { watchTyping } from '../parts/typedHere.ts'
import { whenIdle } from '../parts/whenIdle.ts'
import { fetchPlayerScreen, roomOf, standing, waysFor } from '../routes.tsx'
import { Unlock } from '../screens/unlock/unlock.tsx'
import { HandOver } from './HandOver.tsx'
import { Opening, Pages } from './Pages.tsx'
import { ToldNotes } from './Told.tsx'
import { useAfterRestore } from './useAfterRestore.ts'
import { useAliveSignal } from './useAliveSignal.ts'
import { handOverKey, useHandOver } from './useHandOverKey.ts'
import { useHeadingFocus } from './useHeadingFocus.ts'
import { useLockKey } from './useLockKey.ts'
import { useSavedNotice } from './useSavedNotice.ts'
import { type Session, type Status, useSession } from './useSession.ts'
import { useTurnedAway } from './useTurnedAway.ts'

const Setup = lazy(async () => ({ default: (await import('../screens/setup/setup.tsx')).Setup }))
const MoveHere = lazy(async () => ({
	default: (await import('../screens/records/MoveHere.tsx')).MoveHere,
}))
/** The list of players stands first; then what it leads to is fetched. */
const fetchWithinMs = 2000

/** A PC without records: a clinic is set up, or records are brought here. */
function FirstStart({ done }: { done: () => void }) {
	const [chosen, setChosen] = useState<'set-up' | 'pack'>()
	return (
		<Opening what="the set-up">
			{chosen !== 'pack' && <Setup done={done} made={() => setChosen('set-up')} />}
			{chosen !== 'set-up' && <MoveHere done={done} opened={() => setChosen('pack')} />}
		</Opening>
	)
}
function OpenWorkstation({ status: { demo, person, clinicName, told } }: { status: Status }) {
	const [address] = useHashLocation()
	const { notice, saved } = useSavedNotice(address.split('/')[2])
	useAfterRestore(person?.role)
	const isLeaving = useTurnedAway(address, person)
	useEffect(() => whenIdle(fetchPlayerScreen, fetchWithinMs), [])
	return (
		<>
			<Palette role={person?.role} />
			{told && <ToldNotes key={`told ${person?.personId}`} told={told} />}
			{!isLeaving && (
				<Pages
					key={`pages ${person?.personId}`}
					demo={demo}
					around={{ person, clinicName, notice, saved }}
				/>
			)}
		</>
	)
}
function Gate({ status, trouble, look }: Session) {
	if (!status)
		return trouble ? null : <Typography role="status">Opening the workstation.</Typography>
	if (status.state === 'needs-setup') return <FirstStart done={look} />
	if (status.state === 'locked') return <Unlock clinicName={status.clinicName} />
	return <OpenWorkstation status={status} />
}
export function App() {
	const session = useSession()
	const [address] = useHashLocation()
	const { status, trouble, lock } = session
	const open = status?.state === 'open'
	const { wide, fits } = standing(address)
	useEffect(() => void loadLook(), [])
	useEffect(watchTyping, [])
	const handOver = useHandOver(open)
	useLockKey(open, lock)
	useAliveSignal(open)
	useHeadingFocus(address, status && `${status.state} ${status.person?.personId ?? ''}`)
	return (
		<Frame
			status={status}
			ways={open ? waysFor(status.person?.role) : []}
			lock={lock}
			handOver={{ open: handOver.show, keys: handOverKey }}
			trouble={trouble}
			here={roomOf(address)}
			wide={open && wide}
			fits={open && fits}
		>
			<Gate {...session} />
			{open && handOver.shown && <HandOver person={status.person} close={handOver.close} />}
		</Frame>
	)
}
