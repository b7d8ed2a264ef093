/** A fixture list as it is read in: its text, what is asked of it, and what it would change. */
import { useState } from 'react'
import { applyImport, type ImportPreview } from '../../../shared/engine/season/preview.ts'
import { call, wordsOf } from '../../host.ts'
import { isCalendar } from './listText.ts'
import type { Edit } from './options.ts'

export interface ImportProps extends Edit {
	playerId: string
	/** Resolves once every change of the season is saved: the host compares with what it has. */
	saved: () => Promise<void>
}
export function useListImport({ playerId, season, change, saved }: ImportProps) {
	const [text, setText] = useState('')
	const [source, setSource] = useState('fixture list')
	const [team, setTeam] = useState('')
	const [code, setCode] = useState('')
	const [answers, setAnswers] = useState<Record<string, string>>({})
	const [preview, setPreview] = useState<ImportPreview>()
	const [says, setSays] = useState('')
	const [busy, setBusy] = useState(false)
	/** Another text: what was read of the earlier one no longer holds. */
	const type = (words: string) => {
		setText(words)
		setPreview(undefined)
		setAnswers({})
	}
	const answer = (key: string, value: string) => setAnswers((now) => ({ ...now, [key]: value }))
	const look = async () => {
		if (!text.trim())
			return setSays(
				'List: empty, given nothing, allowed: the text of an .ics calendar or of a .csv table, ' +
					'pasted or from a file.',
			)
		setBusy(true)
		setSays('')
		try {
			await saved()
			setPreview(
				await call('season.previewImport', {
					playerId,
					text,
					kind: isCalendar(text) ? 'ics' : 'csv',
					answers: { ...answers, source, team, code },
				}),
			)
		} catch (error) {
			setPreview(undefined)
			setSays(wordsOf(error))
		} finally {
			setBusy(false)
		}
	}
	const take = (found: ImportPreview) => {
		change(
			{ ...season, sessions: applyImport(season.sessions ?? [], found) },
			`Taken over from ${source}: ${found.add.length} added, ${found.change.length} ` +
				`changed, ${found.remove.length} taken out.`,
		)
		type('')
	}
	const about = { source, setSource, team, setTeam, code, setCode }
	return { ...about, text, type, answers, answer, preview, says, setSays, busy, look, take }
}
export type ListImport = ReturnType<typeof useListImport>
