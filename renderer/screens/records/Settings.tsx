/** Settings of the records: idle lock, age of a backup, retention rule, local ages. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { retentionRules } from '../../../shared/desk/records/retention.ts'
import { type RecordSettings, recordSettingsSchema } from '../../../shared/desk/records/settings.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Field, Form, Outcome, Sheet } from '../../parts/form.tsx'
import { change, useHost, useHostAction } from '../../query.ts'

const fields = [
	['idleMinutes', 'Lock after minutes without a touch'],
	['backupWarnDays', 'Warn when the backup is older than days'],
	['retention.adultYears', 'Keep years after the last entry'],
	['retention.minorUntilAgeYears', "Keep a minor's record until age"],
	['retention.seventeenUntilAgeYears', 'Keep until age, where 17 at the last entry'],
	['retention.adultAgeYears', 'Adult for retention from age'],
	['ages.adultYears', 'Guardian consents end at age'],
	['ages.ownConsentYears', 'Own consent without a note from age'],
] as const
type Typed = Readonly<Record<string, string>>
interface Source {
	name: string
	source: string
}
const rules = Object.values(retentionRules)

function typedOf({ idleMinutes, backupWarnDays, retention, ages }: RecordSettings): Typed {
	return {
		idleMinutes: String(idleMinutes),
		backupWarnDays: String(backupWarnDays),
		...retentionTyped(retention),
		'ages.adultYears': String(ages.adultYears),
		'ages.ownConsentYears': String(ages.ownConsentYears),
	}
}
const retentionTyped = (
	rule: Pick<
		RecordSettings['retention'],
		'adultYears' | 'minorUntilAgeYears' | 'seventeenUntilAgeYears' | 'adultAgeYears'
	>,
): Typed => ({
	'retention.adultYears': String(rule.adultYears),
	'retention.minorUntilAgeYears': String(rule.minorUntilAgeYears),
	'retention.seventeenUntilAgeYears': String(rule.seventeenUntilAgeYears),
	'retention.adultAgeYears': String(rule.adultAgeYears),
})
/** @throws Error naming the field, what was typed and what is wrong */
function settingsOf(typed: Typed, source: Source): RecordSettings {
	const number = (path: string) => Number(typed[path])
	const read = recordSettingsSchema.safeParse({
		idleMinutes: number('idleMinutes'),
		backupWarnDays: number('backupWarnDays'),
		retention: {
			...source,
			adultYears: number('retention.adultYears'),
			minorUntilAgeYears: number('retention.minorUntilAgeYears'),
			seventeenUntilAgeYears: number('retention.seventeenUntilAgeYears'),
			adultAgeYears: number('retention.adultAgeYears'),
		},
		ages: {
			adultYears: number('ages.adultYears'),
			ownConsentYears: number('ages.ownConsentYears'),
		},
	})
	if (read.success) return read.data
	const [issue] = read.error.issues
	const path = issue?.path.join('.') ?? ''
	const label = fields.find(([known]) => known === path)?.[1] ?? path
	throw new Error(`${label}: ${typed[path] ?? ''} cannot be used. ${issue?.message ?? ''}.`)
}
function SettingsForm({ held }: { held: RecordSettings }) {
	const [typed, setTyped] = useState(() => typedOf(held))
	const [source, setSource] = useState<Source>({
		name: held.retention.name,
		source: held.retention.source,
	})
	const action = useHostAction()
	const start = (name: string) => {
		const rule = rules.find((known) => known.name === name)
		if (!rule) return
		setSource({ name: rule.name, source: rule.source })
		setTyped((now) => ({ ...now, ...retentionTyped(rule) }))
	}
	const save = async () => {
		await change('recordSettings.save', settingsOf(typed, source))
		return 'Saved.'
	}
	return (
		<Form sx={{ display: 'grid', gap: 2 }} submit={() => action.run(save)}>
			<Outcome of={action} />
			<Sheet
				title="Settings of the records"
				hint="Not legal advice: local law decides how long to keep and who may consent."
			>
				<Field
					label="Start from a rule"
					value={source.name}
					set={start}
					options={rules.map((rule) => rule.name)}
					optional
					hint={source.source}
				/>
				<Box />
				{fields.map(([path, label]) => (
					<Field
						key={path}
						label={label}
						value={typed[path] ?? ''}
						set={(text) => setTyped((now) => ({ ...now, [path]: text }))}
					/>
				))}
			</Sheet>
			<Box>
				<Button type="submit" variant="contained" disabled={action.busy}>
					Save settings
				</Button>
			</Box>
		</Form>
	)
}
export function RecordsSettings() {
	const settings = useHost('recordSettings.get', {})
	return (
		<Answered of={settings} what="the settings of the records">
			{(held) => <SettingsForm held={held} />}
		</Answered>
	)
}
