#!/bin/sh
# Verifies an export for audit: sh verify.sh [EARLIER/heads.txt], in the unpacked folder. Needs a POSIX shell with grep, sed and awk, and sha256sum.
# Each line of a book names the SHA-256 of the line before it, so a line that was changed or taken out shows;
# against the heads of an earlier export, so do lines that were taken out from the end or written anew.
old=
if [ -n "$1" ]; then
  [ -r "$1" ] || { echo "$1: cannot be read"; exit 2; }
  for book in history comments keys; do
    grep -q "^$book [0-9][0-9]* [0-9a-f]\{64\}\$" "$1" || { echo "$1: is no heads.txt of an export, it lacks $book"; exit 2; }
  done
  old=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
fi
cd "$(dirname "$0")" || exit 2
wrong=0
say() { echo "$1"; wrong=1; }
for book in history comments keys; do
  before=0000000000000000000000000000000000000000000000000000000000000000
  count=0
  while IFS= read -r line; do
    count=$((count + 1))
    case $line in
      "{\"before\":\"$before\","*) ;;
      *) say "$book.jsonl, line $count: does not follow the line before it" ;;
    esac
    before=$(printf '%s' "$line" | sha256sum | cut -d ' ' -f 1)
    if [ -n "$old" ] && grep -q "^$book $count " "$old"; then
      grep -q "^$book $count $before\$" "$old" || say "$book.jsonl, line $count: is not the line that the earlier export ended with"
    fi
  done < "$book.jsonl"
  grep -q "^$book $count $before\$" heads.txt || say "$book.jsonl: does not end as heads.txt says"
  if [ -n "$old" ]; then
    earlier=$(sed -n "s/^$book \([0-9]*\) .*/\1/p" "$old")
    [ "$count" -ge "$earlier" ] || say "$book.jsonl: has $count lines, the earlier export had $earlier"
  fi
  echo "$book: $count lines"
done
# Names and texts: each digest of the books has its text in parts.txt, unless the register has replaced it and says so.
while IFS=' ' read -r digest salt text; do
  [ "$(printf '%s' "$salt$text" | sha256sum | cut -d ' ' -f 1)" = "$digest" ] || say "parts.txt: $digest is not what was written"
done < parts.txt
lacking() { grep -oh '_digest":"[0-9a-f]\{64\}' "$@" | cut -d '"' -f 3 | sort -u | awk 'FILENAME == "parts.txt" { known[$1]; next } !($1 in known) { n++ } END { print n + 0 }' parts.txt -; }
lack=$(lacking history.jsonl comments.jsonl)
replaced=$(sed -n 's/.*"event":"names_replaced".*"comment":"replaced \([0-9]*\):.*/\1/p' history.jsonl | awk '{ n += $1 } END { print n + 0 }')
[ "$lack" -le "$replaced" ] || say "parts.txt: $lack names and texts are missing, the history says that $replaced were replaced"
keys=$(lacking keys.jsonl)
[ "$keys" -le $((3 * $(grep -c '"event":"namereplaced"' keys.jsonl))) ] || say "parts.txt: $keys names of keys.jsonl are missing, it says that fewer were replaced"
[ $((lack + keys)) -eq 0 ] || echo "$((lack + keys)) names and texts were replaced and are proved by their digests alone."
# Plans, records, reports and documents: each has its line in contents.txt, unless the history says that its names were replaced, and by what.
while IFS=' ' read -r digest salt name; do
  [ -f "$name" ] || { say "$name: is missing"; continue; }
  [ "$( { printf '%s' "$salt"; cat "$name"; } | sha256sum | cut -d ' ' -f 1)" = "$digest" ] || say "$name: is not what was kept"
done < contents.txt
lost=$(awk 'FILENAME == "contents.txt" { there[$1]; next }
  { sub(/^[{]"before":"[0-9a-f]+",/, "")
    while (match($0, /"(before|digest|report)":"[0-9a-f]+"/)) {
      split(substr($0, RSTART, RLENGTH), part, "\"")
      if (part[2] == "before") gone[part[4]]; else named[part[4]]
      $0 = substr($0, RSTART + RLENGTH)
    } }
  END {
    for (one in named) if (!(one in there) && !(one in gone)) print "contents.txt: " one " is missing, and nothing says that it was replaced"
    for (one in gone) if (one in there) print "contents.txt: " one " is there, the history says that it was replaced"
    for (one in there) if (!(one in named)) print "contents.txt: " one " stands in no book"
  }' contents.txt history.jsonl)
[ -z "$lost" ] || say "$lost"
gone=$(grep -oE '"before":"[0-9a-f]{64}","digest"' history.jsonl | sort -u | grep -c .)
[ "$gone" -eq 0 ] || echo "In $gone plans, records, reports and documents names were replaced; what they were is proved by their digests alone."
[ "$wrong" -eq 0 ] && echo "All lines follow each other, and all files are those that were kept."
exit $wrong
