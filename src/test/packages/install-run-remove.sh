#!/usr/bin/env bash
# Installs the .deb in a new system of this machine's kind (Debian or Ubuntu), runs the program,
# removes and purges it, and fails where something is not as src/docs/packages.md says.
# First: mvn -Ppackages package
#
#   src/test/packages/install-run-remove.sh [FOLDER]
#
# Root, and debootstrap; some minutes, and downloads from the package sources of this machine.
# FOLDER keeps the system for another run, else it is thrown away. Nothing outside of it is touched.
# The service is not started: there is no systemd in it. What it starts is run by hand, as its user.
set -euo pipefail
cd "$(dirname "$0")/../../.."

deb=$(ls target/thumbseal_*_all.deb)
archive=$(ls target/thumbseal-*.tar.gz)
root=${1:-}
if [ -z "$root" ]; then
  root=$(mktemp -d)
  chmod 755 "$root"
  throw_away=yes
fi

ended() {
  umount "$root/proc" 2>/dev/null || true
  if [ "${throw_away:-}" = yes ]; then rm -rf --one-file-system "$root"; fi
}
trap ended EXIT

fail() {
  echo "FAILED: $1" >&2
  exit 1
}

# Says what is tried; its output appears only where it fails. The first argument is the exit code.
inside() {
  local expected=$1 status=0
  shift
  echo "- $*"
  said=$(chroot "$root" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin DEBIAN_FRONTEND=noninteractive \
    LC_ALL=C.UTF-8 HOME=/root "$@" 2>&1 </dev/null) || status=$?
  [ "$status" -eq "$expected" ] || fail "exit code $status instead of $expected: $said"
}

says() {
  [[ $said == *"$1"* ]] || fail "it does not say '$1', but: $said"
}

# As the service does: its user, its group, its environment, its mask.
as_service() {
  inside "$1" setpriv --reuid=thumbseal --regid=thumbseal --groups="$(dialout)" --bounding-set=-all \
    --no-new-privs --inh-caps=-all env HOME=/var/lib/thumbseal \
    THUMBSEAL_KEY=/var/lib/thumbseal/keys/signing-key.pem \
    sh -c 'umask 0027 && cd /var/lib/thumbseal && exec "$@"' sh "${@:2}"
}

dialout() {
  chroot "$root" getent group dialout | cut -d: -f3
}

# Of all that must outlive the package.
sums() {
  (cd "$root/var/lib/thumbseal" && find keys results -type f ! -name '.*' -exec sha256sum {} + | sort -k 2)
}

if [ ! -e "$root/etc/debian_version" ]; then
  mirror=$(apt-get indextargets --format '$(REPO_URI)' 'Created-By: Packages' | head -n 1)
  echo "- debootstrap"
  release=$(sed -n 's/^VERSION_CODENAME=//p' /etc/os-release)
  debootstrap --variant=minbase "$release" "$root" "$mirror" >"$root.log" 2>&1 ||
    fail "debootstrap: $(tail -n 5 "$root.log")"
  rm -f "$root.log"
fi
mount -t proc proc "$root/proc"
captures=/srv/captures
rm -rf "$root$captures" "$root/opt"/thumbseal-*
cp -r fixtures/captures "$root/srv/"
# What the sensor sent: a capture without its first lines and times.
sed -e '/^#/d' -e 's/^[^ ]* //' fixtures/captures/sound.log >"$root$captures/sound.lines"
cp "$deb" "$root/srv/thumbseal.deb"
tar -xzf "$archive" -C "$root/opt" --no-same-owner

# Of an earlier run in the same folder.
inside 0 sh -c 'dpkg --purge thumbseal && rm -rf /var/lib/thumbseal'

echo "Install"
inside 0 apt-get -qq -y update
inside 0 apt-get -qq -y --no-install-recommends install man-db bash-completion
inside 0 apt-get -qq -y --no-install-recommends install /srv/thumbseal.deb
says "the service is not running"
inside 0 stat -c '%U:%G %a' /var/lib/thumbseal /var/lib/thumbseal/keys
says "thumbseal:thumbseal 750"
says "thumbseal:thumbseal 700"

echo "Run"
inside 0 thumbseal --version
says "thumbseal "
inside 1 thumbseal ports
says "no serial port found"
inside 0 thumbseal replay --asset SP-1 $captures/sound.log
says "PASS"
inside 1 thumbseal replay --asset SP-1 $captures/leak.log
says "FAIL"

echo "Run as the service does"
watch=$(sed -n 's/^ExecStart=\(.*\) \$THUMBSEAL_WATCH$/\1/p' "$root/lib/systemd/system/thumbseal.service")
[ -n "$watch" ] || fail "the unit starts something else"
as_service 0 $watch --port file:$captures/sound.lines --asset SP-1
says "made a signing key in /var/lib/thumbseal/keys/signing-key.pem"
says "PASS"
as_service 0 thumbseal verify results
kept=$(sums)
[ "$(wc -l <<<"$kept")" -ge 5 ] || fail "result, recording, head and both keys are not all there: $kept"
as_service 2 $watch --port nonsense:1

echo "Which Java"
inside 3 env JAVA_HOME=/nowhere thumbseal --version
says "JAVA_HOME is /nowhere, where there is no bin/java"
mkdir -p "$root/srv/old/bin"
echo 'JAVA_VERSION="11.0.27"' >"$root/srv/old/release"
printf '#!/bin/sh\necho old >&2\nexit 1\n' >"$root/srv/old/bin/java"
chmod +x "$root/srv/old/bin/java"
inside 3 env JAVA_HOME=/srv/old thumbseal --version
says "older than Java 17"
inside 0 env PATH=/srv/old/bin:/usr/bin:/bin thumbseal --version
inside 0 env JAVA_OPTS="-XX:+UseParallelGC -Xmx96m -XX:+PrintFlagsFinal" thumbseal --version
[[ $said =~ MaxHeapSize\ +=\ 100663296\  ]] || fail "JAVA_OPTS do not win"

echo "Archive"
folder=$(cd "$root" && echo opt/thumbseal-*)
inside 0 ln -sf "/$folder/thumbseal" /srv/by-link
inside 0 /srv/by-link --version
inside 0 /srv/by-link replay --asset "a pump" $captures/sound.log
says "a pump"
inside 0 ls "/$folder"
for file in LICENSE NOTICE README.txt thumbseal.cmd; do says "$file"; done

echo "Manual and completion"
inside 0 man thumbseal
says "/etc/default/thumbseal"
inside 0 man thumbseal-key-new
says "--passphrase"
inside 0 bash -c '. /usr/share/bash-completion/completions/thumbseal
  COMP_WORDS=(thumbseal wat) COMP_CWORD=1; _complete_thumbseal; echo "${COMPREPLY[*]}"'
says "watch"

echo "Upgrade, remove, purge"
echo '# ours' >>"$root/etc/default/thumbseal"
inside 0 dpkg -i /srv/thumbseal.deb
inside 0 grep -c '# ours' /etc/default/thumbseal
inside 0 apt-get -qq -y remove thumbseal
inside 1 sh -c 'command -v thumbseal || exit 1'
inside 0 grep -c '# ours' /etc/default/thumbseal
[ "$(sums)" = "$kept" ] || fail "removing touched results or key"
inside 0 dpkg -i /srv/thumbseal.deb
as_service 0 thumbseal verify results
inside 0 apt-get -qq -y purge thumbseal
says "results and key stay in /var/lib/thumbseal"
[ "$(sums)" = "$kept" ] || fail "purging touched results or key"
left=$(find "$root" -xdev -name '*thumbseal*' ! -path "$root/opt/*" ! -path "$root/srv/*" \
  ! -path "$root/tmp/*" ! -path "$root/var/cache/man/*" -printf '/%P\n')
[ "$left" = /var/lib/thumbseal ] || fail "purging left behind: $left"
echo "All as it should be."
