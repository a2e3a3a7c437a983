// Writes formula-figures.tsv: a thousand random counts, and what eight packages of npm (MIT, Titus
// Wormer) compute from them. Made in November 2026 with version 2.0.1 of each.
//
//     npm install flesch flesch-kincaid spache-formula smog-formula coleman-liau automated-readability \
//         gunning-fog dale-chall-formula
//     node make_formula_figures.mjs > formula-figures.tsv

import {automatedReadability} from 'automated-readability'
import {colemanLiau} from 'coleman-liau'
import {daleChallFormula} from 'dale-chall-formula'
import {flesch} from 'flesch'
import {fleschKincaid} from 'flesch-kincaid'
import {gunningFog} from 'gunning-fog'
import {smogFormula} from 'smog-formula'
import {spacheFormula} from 'spache-formula'

// Always the same numbers (Lehmer's generator, as Park and Miller have it).
let seed = 6
function below(most) {
  seed = (seed * 48271) % 2147483647
  return seed % most
}

const heads = ['words', 'sentences', 'syllables', 'letters', 'characters', 'polysyllables', 'complex', 'unfamiliar',
  'flesch', 'flesch-kincaid', 'spache', 'smog', 'coleman-liau', 'ari', 'fog', 'dale-chall']
console.log(heads.join('\t'))
for (let row = 0; row < 1000; row++) {
  const word = 1 + below(row % 2 ? 500 : 50000)
  const sentence = 1 + below(word)
  const syllable = word + below(word + 1)
  const letter = word + below(6 * word)
  const character = letter + below(word)
  const polysillabicWord = below(word)
  const complexPolysillabicWord = below(polysillabicWord + 1)
  const difficult = row % 3 ? below(word + 1) : below(Math.ceil(word / 10))
  const counts = {word, sentence, syllable, letter, character, polysillabicWord, complexPolysillabicWord,
    difficultWord: difficult, unfamiliarWord: difficult}
  console.log([word, sentence, syllable, letter, character, polysillabicWord, complexPolysillabicWord, difficult,
    flesch(counts), fleschKincaid(counts), spacheFormula(counts), smogFormula(counts), colemanLiau(counts),
    automatedReadability(counts), gunningFog(counts), daleChallFormula(counts)].join('\t'))
}
