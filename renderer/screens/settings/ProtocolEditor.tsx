/**
 * Every threshold with its unit, source and strength. A change is tried on the demo visits first,
 * then kept as a new version with a reason.
 */
import {
	Alert,
	Box,
	Button,
	Chip,
	Collapse,
	Paper,
	Stack,
	TextField,
	Typography,
} from '@mui/material'
import { useCallback, useEffect, useMemo, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { protocolProblems } from '../../../shared/engine/protocol/check.ts'
import {
	type ProtocolFile,
	shippedProtocol,
	type ThresholdKey,
} from '../../../shared/engine/protocol/protocol.ts'
import { rows } from '../../../shared/engine/protocol/rows.ts'
import { call, wordsOf } from '../../host.ts'
import { strengthWords } from '../../parts/Basis.tsx'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { dayInWords, dayOfMoment } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { parseNumber } from '../../parts/parseNumber.ts'

type Effect = OutputOf<'protocol.preview'>
type Versions = OutputOf<'protocol.versions'>['versions']
type Scheme = NonNullable<ProtocolFile['fpiScheme']>
const keys = Object.keys(rows) as ThresholdKey[]
const rooms = [...new Set(keys.map((key) => key.slice(0, key.indexOf('.'))))]
const roomWords: Record<string, string> = {
	sizing: 'Sizing',
	ankle: 'Ankle',
	posture: 'Posture',
	growth: 'Growth',
	screening: 'Screening',
	footwear: 'Footwear',
	loading: 'Load',
	insert: 'Insert',
	season: 'Season',
	squad: 'Squad day',
}
/** 'toeRoomAdultMinMm' in words; the unit stands beside the field. */
const nameOf = (key: string): string => {
	const words = key
		.slice(key.indexOf('.') + 1)
		.replace(/(Mm|Cm|Deg|Kg|Years|Days|Percent)$/, '')
		.replace(/([a-z0-9])([A-Z])/g, '$1 $2')
		.toLowerCase()
	return words.charAt(0).toUpperCase() + words.slice(1)
}
const textsOf = (file: ProtocolFile): Record<string, string> =>
	Object.fromEntries(Object.entries(file.values ?? {}).map(([key, value]) => [key, String(value)]))

/** The typed texts as numbers, and what is wrong with each. */
function read(texts: Readonly<Record<string, string>>): {
	values: Record<string, number>
	wrong: Record<string, string>
} {
	const values: Record<string, number> = {},
		wrong: Record<string, string> = {}
	for (const [key, text] of Object.entries(texts)) {
		const parsed = parseNumber(text, '')
		const [one, more] = parsed.ok ? parsed.values : []
		if (!parsed.ok) wrong[key] = parsed.says
		else if (one === undefined || more !== undefined)
			wrong[key] = `'${text}' is not one number. Type one, or restore the shipped value.`
		else values[key] = one
	}
	for (const { path, message } of protocolProblems(values))
		wrong[path.replace('values.', '')] ??= `${message}.`
	return { values, wrong }
}
export function ProtocolEditor({ mayChange }: { mayChange: boolean }) {
	const [held, setHeld] = useState<OutputOf<'protocol.get'>>()
	const [versions, setVersions] = useState<Versions>([])
	const [texts, setTexts] = useState<Record<string, string>>({})
	const [scheme, setScheme] = useState<Scheme>()
	const [find, setFind] = useState('')
	const [onlyChanged, setOnlyChanged] = useState(false)
	const [why, setWhy] = useState('')
	const [effect, setEffect] = useState<Effect>()
	const [says, setSays] = useState('')
	const [done, setDone] = useState('')
	const load = useCallback(async () => {
		try {
			const [now, all] = await Promise.all([
				call('protocol.get', {}),
				call('protocol.versions', {}),
			])
			setHeld(now)
			setVersions(all.versions)
			setTexts(textsOf(now.file))
			setScheme(now.file.fpiScheme)
		} catch (error) {
			setSays(wordsOf(error))
		}
	}, [])
	useEffect(() => {
		void load()
	}, [load])
	const { values, wrong } = useMemo(() => read(texts), [texts])
	const bad = Object.keys(wrong).length
	const kept = held?.file ?? shippedProtocol
	const stamp = JSON.stringify([values, scheme])
	const edited =
		bad > 0 ||
		JSON.stringify(
			Object.entries(values)
				.filter(([key, value]) => rows[key as ThresholdKey].value !== value)
				.sort(),
		) !== JSON.stringify(Object.entries(kept.values ?? {}).sort()) ||
		scheme !== kept.fpiScheme
	// biome-ignore lint/correctness/useExhaustiveDependencies: the stamp stands for the values
	useEffect(() => {
		setEffect(undefined)
		if (!edited || bad > 0 || !mayChange) return
		let wanted = true
		const timer = setTimeout(() => {
			call('protocol.preview', { values, ...(scheme ? { fpiScheme: scheme } : {}) }).then(
				(value) => {
					if (wanted) {
						setEffect(value)
						setSays('')
					}
				},
				(error) => {
					if (wanted) setSays(wordsOf(error))
				},
			)
		}, 300)
		return () => {
			wanted = false
			clearTimeout(timer)
		}
	}, [stamp, edited, bad, mayChange])
	const put = (key: string, text: string | undefined) => {
		setDone('')
		setTexts(({ [key]: _, ...rest }) => (text === undefined ? rest : { ...rest, [key]: text }))
	}
	const save = async () => {
		setSays('')
		try {
			await call('protocol.save', {
				values,
				...(scheme ? { fpiScheme: scheme } : {}),
				why,
				...(held?.savedAs ? { follows: held.savedAs } : {}),
			})
			await loadProtocol()
			await load()
			setWhy('')
			setDone(
				'Saved. New assessments use it at once; signed ones keep what they were signed under.',
			)
		} catch (error) {
			setSays(wordsOf(error))
		}
	}
	if (!held)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">Opening the protocol.</Typography>
		)
	const wanted = (key: ThresholdKey) =>
		(!onlyChanged || key in texts) &&
		find
			.toLowerCase()
			.split(/\s+/)
			.every((word) =>
				`${key} ${nameOf(key)} ${rows[key].unit} ${rows[key].source} ${rows[key].population}`
					.toLowerCase()
					.includes(word),
			)
	const changed = Object.keys(texts).length
	return (
		<Stack spacing={2}>
			<Panel
				title={
					held.savedAs
						? `Protocol of this clinic, version ${kept.revision}`
						: 'Protocol: the shipped values'
				}
				hint="Every threshold that a finding may rest on. A value set here is marked in each finding that uses it. Restoring brings back the shipped value with its source."
			>
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: { xs: '1fr', md: '2fr 1fr' },
						gap: 2,
						alignItems: 'end',
					}}
				>
					<Field
						label="Find a threshold"
						value={find}
						set={setFind}
						optional
						hint="By name, unit, source or group of players."
					/>
					<Box sx={{ pb: 3 }}>
						<Button
							variant={onlyChanged ? 'contained' : 'outlined'}
							aria-pressed={onlyChanged}
							onClick={() => setOnlyChanged(!onlyChanged)}
						>
							Only values set here ({changed})
						</Button>
					</Box>
				</Box>
			</Panel>
			{mayChange && edited ? (
				<Paper
					component="section"
					aria-label="Change not saved"
					variant="outlined"
					sx={{
						p: 2,
						position: 'sticky',
						top: 8,
						zIndex: 2,
						borderColor: 'primary.main',
						borderWidth: 2,
						maxHeight: '60vh',
						overflow: 'auto',
					}}
				>
					<Typography variant="h2">Change not saved yet</Typography>
					{bad > 0 ? (
						<Typography role="alert" color="error">
							{bad} {bad === 1 ? 'value' : 'values'} cannot be used: see the fields.
						</Typography>
					) : null}
					{effect ? (
						<Box role="status">
							<Typography>
								{effect.changes.length === 0
									? `No finding of the ${effect.visits} demo visits changes.`
									: `Findings change in ${effect.changes.length} of ${effect.visits} demo visits:`}
							</Typography>
							{effect.changes.map((change) => (
								<Box
									key={`${change.name} ${change.visitDate}`}
									sx={{ my: 1, pl: 1.5, borderLeft: 3, borderColor: 'divider' }}
								>
									<Typography sx={{ fontWeight: 600 }}>
										{change.name}, {dayInWords(change.visitDate)}
									</Typography>
									{change.gone.map((words) => (
										<Typography key={words} variant="body2">
											No more: {words}
										</Typography>
									))}
									{change.added.map((words) => (
										<Typography key={words} variant="body2">
											New: {words}
										</Typography>
									))}
								</Box>
							))}
						</Box>
					) : bad === 0 ? (
						<Typography role="status">Trying it on the demo visits.</Typography>
					) : null}
					<Box
						sx={{
							display: 'grid',
							gridTemplateColumns: '1fr auto auto',
							gap: 2,
							alignItems: 'end',
							mt: 1,
						}}
					>
						<Field label="Why it is changed" value={why} set={setWhy} />
						<Button
							variant="contained"
							disabled={bad > 0 || why.trim().length < 3}
							onClick={() => void save()}
						>
							Save as a new version
						</Button>
						<Button
							onClick={() => {
								setTexts(textsOf(kept))
								setScheme(kept.fpiScheme)
							}}
						>
							Discard
						</Button>
					</Box>
				</Paper>
			) : null}
			<Trouble says={says} />
			{done && (
				<Alert severity="success" role="status">
					{done}
				</Alert>
			)}
			{rooms.map((room) => (
				<Room
					key={room}
					room={room}
					open={find.trim() !== '' || onlyChanged}
					shown={keys.filter((key) => key.startsWith(`${room}.`) && wanted(key))}
					texts={texts}
					wrong={wrong}
					put={mayChange ? put : undefined}
					scheme={
						room === 'posture' && !find && !onlyChanged
							? { now: scheme, set: mayChange ? setScheme : undefined }
							: undefined
					}
				/>
			))}
			<Panel title="Versions" hint="Signed visits name the version they were signed under.">
				{versions.length === 0 ? (
					<Typography color="text.secondary">Only the shipped values so far.</Typography>
				) : null}
				{versions.map((version) => (
					<Box
						key={version.savedAs}
						sx={{
							display: 'flex',
							flexWrap: 'wrap',
							gap: 2,
							alignItems: 'center',
							justifyContent: 'space-between',
							borderBottom: 1,
							borderColor: 'divider',
							py: 1,
						}}
					>
						<Box>
							<Typography sx={{ fontWeight: 600 }}>
								Version {version.file.revision}, {dayOfMoment(version.at)}, {version.by}
								{version.savedAs === held.savedAs ? ' (in force)' : ''}
							</Typography>
							<Typography variant="body2">
								{version.why}. Values set: {Object.keys(version.file.values ?? {}).length}.
							</Typography>
						</Box>
						{mayChange && version.savedAs !== held.savedAs ? (
							<Button
								variant="outlined"
								onClick={() => {
									setTexts(textsOf(version.file))
									setScheme(version.file.fpiScheme)
									setWhy(`Back to version ${version.file.revision}`)
								}}
							>
								Take the values of version {version.file.revision}
							</Button>
						) : null}
					</Box>
				))}
				{mayChange && held.savedAs ? (
					<Box>
						<Button
							variant="outlined"
							onClick={() => {
								setTexts({})
								setScheme(undefined)
								setWhy('Back to the shipped values')
							}}
						>
							Restore all shipped values
						</Button>
					</Box>
				) : null}
			</Panel>
		</Stack>
	)
}
interface RoomProps {
	room: string
	open: boolean
	shown: readonly ThresholdKey[]
	texts: Readonly<Record<string, string>>
	wrong: Readonly<Record<string, string>>
	put: ((key: string, text: string | undefined) => void) | undefined
	scheme:
		| { now: Scheme | undefined; set: ((scheme: Scheme | undefined) => void) | undefined }
		| undefined
}
function Room({ room, open, shown, texts, wrong, put, scheme }: RoomProps) {
	const [own, setOwn] = useState(false)
	const stands = open || own
	const set = shown.filter((key) => key in texts).length
	if (shown.length === 0) return null
	return (
		<Paper
			component="section"
			variant="outlined"
			aria-label={`Thresholds: ${roomWords[room] ?? room}`}
			sx={{ p: 2 }}
		>
			<Button aria-expanded={stands} onClick={() => setOwn(!own)} sx={{ fontSize: '1.2rem' }}>
				{roomWords[room] ?? room}: {shown.length} {shown.length === 1 ? 'threshold' : 'thresholds'}
				{set > 0 ? `, ${set} set here` : ''}
			</Button>
			<Collapse in={stands} unmountOnExit>
				{scheme ? (
					<Box sx={{ py: 1.5, maxWidth: 520 }}>
						<TextField
							select
							fullWidth
							label="Bands of the foot posture index"
							value={scheme.now ?? 'raw'}
							disabled={!scheme.set}
							onChange={(event) =>
								scheme.set?.(event.target.value === 'trial' ? 'trial' : undefined)
							}
							slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
						>
							<option value="raw">raw banding (shipped)</option>
							<option value="trial">trial banding</option>
						</TextField>
					</Box>
				) : null}
				{shown.map((key) => {
					const { value, unit, population, source, strength, surety } = rows[key]
					const isSet = key in texts && texts[key] !== String(value)
					return (
						<Box
							key={key}
							sx={{
								display: 'grid',
								gridTemplateColumns: {
									xs: '1fr',
									md: 'minmax(200px, 1.2fr) 150px minmax(200px, 2fr)',
								},
								gap: 2,
								alignItems: 'start',
								py: 1.5,
								borderBottom: 1,
								borderColor: 'divider',
								...(isSet ? { borderLeft: 4, borderLeftColor: 'warning.main', pl: 1.5 } : {}),
							}}
						>
							<Box>
								<Typography sx={{ fontWeight: 600 }}>{nameOf(key)}</Typography>
								<Typography
									variant="body2"
									color="text.secondary"
									sx={{ overflowWrap: 'anywhere' }}
								>
									{key}
								</Typography>
								{isSet ? (
									<Chip
										size="small"
										color="warning"
										variant="outlined"
										label={`set here; shipped ${value}`}
									/>
								) : null}
							</Box>
							<TextField
								size="small"
								value={texts[key] ?? String(value)}
								disabled={!put}
								error={key in wrong}
								onChange={(event) => put?.(key, event.target.value)}
								slotProps={{
									htmlInput: {
										'aria-label': `${nameOf(key)} (${key})`,
										inputMode: 'decimal',
										style: { fontVariantNumeric: 'tabular-nums' },
									},
								}}
							/>
							<Box>
								<Typography variant="body2">
									<strong>{unit}</strong>. {population}. {source}
									{surety === 'from memory' ? ' (from memory)' : ''}; {strengthWords[strength]}.
								</Typography>
								{wrong[key] ? (
									<Typography variant="body2" role="alert" color="error">
										{wrong[key]}
									</Typography>
								) : null}
								{key in texts && put ? (
									<Button size="small" onClick={() => put(key, undefined)}>
										Restore the shipped value, {value}
									</Button>
								) : null}
							</Box>
						</Box>
					)
				})}
			</Collapse>
		</Paper>
	)
}
