/** What was done last on the page, or why it was refused, in words. */
import { useState } from 'react'
import { wordsOf } from '../../host.ts'

export function useTold() {
	const [trouble, setTrouble] = useState('')
	const [told, setTold] = useState({ says: '', canTakeBack: false })
	return {
		trouble,
		...told,
		refuse: (error: unknown) => setTrouble(wordsOf(error)),
		/** The refusal of before no longer matters. */
		clearTrouble: () => setTrouble(''),
		/** @param canTakeBack whether the last change may be taken back beside these words */
		tell: (says: string, canTakeBack = true) => setTold({ says, canTakeBack }),
	}
}
export type Told = ReturnType<typeof useTold>
