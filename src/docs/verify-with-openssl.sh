#!/bin/sh
# Checks the seal of one result, and the capture beside it, with openssl and the tools every system
# has.
#
#   verify-with-openssl.sh RESULT.json PUBLIC-KEY.pem
#
# The public key comes from whoever sealed the result ("thumbseal key show --pem").
# Exit code 0: the seal is good and by this key; 1: it is not; 2: this is no sealed result.
# Needs openssl 3.0 or newer.
set -eu
LC_ALL=C
export LC_ALL

[ $# -eq 2 ] || { echo "usage: $0 RESULT.json PUBLIC-KEY.pem" >&2; exit 2; }
result=$1
key=$2
for file in "$result" "$key"; do
  [ -r "$file" ] || { echo "$file: cannot be read" >&2; exit 2; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

base64url() { openssl base64 -A | tr '+/' '-_' | tr -d '='; }

# A stored result is one line, and in RFC 8785 form. The signature is the one member that is not
# signed; a quotation mark inside a value is always written \", so this pattern matches members only.
member=',"signature":"[A-Za-z0-9_-]*\.\.[A-Za-z0-9_-]*"'
[ "$(grep -o "$member" "$result" | wc -l)" -eq 1 ] && [ "$(wc -l <"$result")" -eq 1 ] ||
  { echo "$result: not a sealed result as Thumbseal stores it" >&2; exit 2; }
broken() { echo "$result: broken seal: $1"; exit 1; }
jws=$(grep -o "$member" "$result" | cut -d '"' -f 4)
sed "s/$member//" "$result" | tr -d '\n' >"$work/content"

# The header must be this very one: the algorithm, and the RFC 7638 thumbprint of the key.
x=$(openssl pkey -pubin -in "$key" -outform DER | tail -c 32 | base64url)
kid=$(printf '{"crv":"Ed25519","kty":"OKP","x":"%s"}' "$x" | openssl dgst -sha256 -binary | base64url)
header=$(printf '{"alg":"EdDSA","kid":"%s"}' "$kid" | base64url)
[ "${jws%%..*}" = "$header" ] || broken "sealed with another key, or not with EdDSA"

# The last of 86 characters carries two bits of a signature; only these four leave the rest zero.
signature=${jws##*..}
case $signature in *[AQgw]) ;; *) broken "the signature is cut or misspelt" ;; esac
[ ${#signature} -eq 86 ] || broken "the signature is cut or misspelt"
{ printf '%s.' "$header"; base64url <"$work/content"; } >"$work/input"
printf '%s==' "$signature" | tr '_-' '/+' | openssl base64 -d -A >"$work/signature"
openssl pkeyutl -verify -pubin -inkey "$key" -rawin -in "$work/input" \
  -sigfile "$work/signature" >/dev/null 2>&1 || broken "the content is not what was signed"

# The recording lies beside the document, if it came along; what has none has no such members.
evidence='.*"evidence":{"capture":"\([^"\\/]*\)".*"samples":[0-9]*,"sha256":"\([0-9a-f]*\)"}.*'
recording=$(sed -n "s/$evidence/\1/p" "$work/content")
capture=
if [ -n "$recording" ] && [ -f "$(dirname -- "$result")/$recording" ]; then
  digest=$(openssl dgst -sha256 -r "$(dirname -- "$result")/$recording" | cut -d ' ' -f 1)
  [ "$digest" = "$(sed -n "s/$evidence/\2/p" "$work/content")" ] ||
    broken "the capture is not the one that was graded"
  capture="; the capture is the one that was graded"
elif [ -n "$recording" ]; then
  capture="; its capture is not here"
fi
echo "$result: good seal by the key $kid$capture"
