/** A new folder in the one that is shown. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { checkFolderName } from '../../../shared/desk/places/folder-name.ts'
import { Field, Form } from '../form.tsx'
import type { Places } from './usePlaces.ts'

/** @param done told once it stands there, or nobody wants it any more */
export function NewFolder({ places, done }: { places: Places; done: () => void }) {
	const [name, setName] = useState('')
	const [wrong, setWrong] = useState('')
	const make = async () => {
		const checked = checkFolderName(name)
		if ('says' in checked) return setWrong(checked.says)
		if (await places.makeFolder(checked.name)) done()
	}
	return (
		<Form
			label="New folder"
			submit={() => void make()}
			sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, alignItems: 'start', pt: 1 }}
		>
			<Box sx={{ flexGrow: 1, minWidth: 180 }}>
				<Field
					focus
					label="Name of the new folder"
					value={name}
					set={(next) => {
						setName(next)
						setWrong('')
					}}
					error={wrong}
				/>
			</Box>
			<Button type="submit" variant="outlined" disabled={places.busy} sx={{ minHeight: 44 }}>
				Make the folder
			</Button>
			<Button onClick={done} sx={{ minHeight: 44 }}>
				Not now
			</Button>
		</Form>
	)
}
