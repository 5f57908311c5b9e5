// As built: who signed each step and who looked at it as well, with the photos and their hashes, so that each can be held against its file.
import type { BuiltStep, Hand, PhotoTaken } from '../../job/model/asBuilt.ts'
import { signOffsOf } from '../../unit/derive/signOffs.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'

type Pictures = ReadonlyMap<string, string>

export function asBuiltSheet({ built, pictures = new Map(), work }: JobBookInput): Markup | undefined {
  if (!built || built.steps.length + built.otherPhotos.length === 0) return undefined
  const wanted = signOffsOf(
    work.unit,
    work.joints,
    built.steps.filter(({ signed }) => signed.length > 0).map(({ step }) => step),
  )
  const rows = built.steps.map((one) => {
    const wants = wanted.get(one.step)
    const noPhoto = wants?.photo !== undefined && one.photos.length === 0
    return markup`<tr><td><b>${one.step}</b></td><td>${signedText(one)}</td><td>${secondText(one, wants?.secondPerson === true)}</td></tr>${(one.photos.length > 0 || noPhoto) && markup`<tr><td colspan="3">${noPhoto && markup`<span class="told">No photo was taken, though one was wanted: ${wants?.photo}.</span>`}${photoList(one.photos, pictures)}</td></tr>`}`
  })
  const others =
    built.otherPhotos.length > 0 && markup`<h3>Photos of parts</h3>${photoList(built.otherPhotos, pictures)}`
  return markup`<section id="as-built"><h2>As built: signatures and photos</h2>${rows.length > 0 && markup`<table><colgroup><col style="width:52mm"><col style="width:58mm"><col></colgroup><thead><tr><th>Step</th><th>Done by</th><th>Second person</th></tr></thead><tbody>${rows}</tbody></table>`}${others}</section>`
}

const handText = ({ person, ms }: Hand): string => `${person}, ${timeText(ms)}`

function signedText({ signed }: BuiltStep): Markup {
  if (signed.length === 0) return markup`<span class="told">not signed</span>`
  return markup`${signed.map((one) => markup`<div>${handText(one)}</div>`)}`
}

function secondText({ second, signed }: BuiltStep, isWanted: boolean): Markup | undefined {
  if (second) {
    const how = [second.method, second.found].filter((text) => text !== undefined).join(': ')
    return markup`${second.how === 'second person' ? '' : markup`<b>One person, checked again:</b> `}${handText(second)}${how !== '' && markup`<br><span class="told">${how}</span>`}`
  }
  return isWanted && signed.length > 0 ? markup`<b>wanted, and nobody has signed</b>` : undefined
}

const photoList = (photos: readonly PhotoTaken[], pictures: Pictures): Markup | undefined =>
  photos.length > 0 ? markup`<ul class="photos">${photos.map((photo) => photoItem(photo, pictures))}</ul>` : undefined

function photoItem(photo: PhotoTaken, pictures: Pictures): Markup {
  const said = [photo.of, photo.says].filter((text) => text !== undefined).join(': ')
  const small = pictures.get(photo.sha256)
  const alt = `Photo by ${handText(photo)}${said && `: ${said}`}`
  return markup`<li>${small === undefined ? markup`<p class="told">The picture is not in this book.</p>` : markup`<img src="data:image/jpeg;base64,${small}" alt="${alt}"/>`}<div>${said && markup`${said}<br>`}${handText(photo)}<br><span class="hash">SHA-256 ${photo.sha256}</span></div></li>`
}

/** After ISO 8601, to the minute. A book is read far from where it was made: the time is that of Greenwich, and says so. */
const timeText = (ms: number): string => `${new Date(ms).toISOString().slice(0, 16).replace('T', ' ')} UTC`
