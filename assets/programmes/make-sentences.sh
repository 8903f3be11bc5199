#!/bin/sh
# Makes sentences.wav: our own sentences spoken by espeak-ng, packed by sox as IMA ADPCM. Both from Debian: apt-get install espeak-ng sox
# Run in this folder. Made with espeak-ng 1.51 and sox 14.4.2; other versions speak a little differently.
set -e
work=$(mktemp -d)
trap 'rm -r "$work"' EXIT
number=0
while IFS='|' read -r voice words; do
  number=$((number + 1))
  espeak-ng -v "$voice" -s 165 -w "$work/spoken.wav" "$words"
  # both voices as loud as each other, and a breath after each sentence
  sox --no-dither "$work/spoken.wav" "$work/$(printf %02d $number).wav" silence 1 0.01 0.1% reverse silence 1 0.01 0.1% reverse gain -n -3 pad 0 0.35
done < sentences.txt
sox --no-dither "$work"/[0-9]*.wav -e ima-adpcm sentences.wav
soxi sentences.wav
