# Read by ./haywright and ./check: finds a JDK and Maven, or installs them with apt, or says in one line what is missing.

say() { printf '%s\n' "$*" >&2; }

can_install() { [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; }

apt_install() {
  say "Installing with apt: $*"
  { apt-get install -y -q --no-install-recommends "$@" || { apt-get update -q && apt-get install -y -q --no-install-recommends "$@"; }; } \
    >/dev/null </dev/null || { say "apt could not install: $*. Is there a network?"; return 1; }
}

# Sets java, java_version and java_release of JAVA_HOME or the path; 0 where there is none. The file that a JDK carries
# is read first, because starting it only to ask costs a tenth of a second.
find_java() {
  local file
  java=java
  if [ -n "${JAVA_HOME:-}" ] && [ -x "$JAVA_HOME/bin/java" ]; then java="$JAVA_HOME/bin/java"; fi
  file=$(readlink -f -- "$(command -v "$java" || true)" 2>/dev/null) || file=
  file="${file%/bin/java}/release"
  java_version=
  if [ -f "$file" ]; then java_version=$(sed -n 's/^JAVA_VERSION="\(.*\)"/\1/p' "$file"); fi
  if [ -z "$java_version" ]; then java_version=$("$java" -version 2>&1 | sed -n 's/.* version "\(.*\)".*/\1/p') || true; fi
  java_release=${java_version%%[!0-9]*}
  java_release=${java_release:-0}
}

# Prints version and path of the newest java found where JDKs usually are, the one in use among them.
newest_java() {
  local home version
  for home in "${JAVA_HOME:-}" "$(dirname -- "$(dirname -- "$(readlink -f -- "$(command -v "$java")")")")" \
    /usr/lib/jvm/* /usr/java/* /opt/java/* /Library/Java/JavaVirtualMachines/*/Contents/Home \
    "$HOME"/.sdkman/candidates/java/* "$HOME"/.jdks/*; do
    [ -n "$home" ] && [ -x "$home/bin/java" ] && [ -f "$home/release" ] || continue
    version=$(sed -n 's/^JAVA_VERSION="\(.*\)"/\1/p' "$home/release")
    printf '%s %s\n' "$version" "$home/bin/java"
  done | sort -V | tail -n 1
}

# A JDK, not only a runtime, because the program is built here.
need_jdk() {
  find_java
  if { [ "$java_release" -lt 17 ] || ! has_compiler; } && can_install; then
    apt_install default-jdk-headless || apt_install openjdk-17-jdk-headless || return 1
    hash -r
    find_java
  fi
  if [ "$java_release" -lt 17 ] || ! has_compiler; then
    say "Needs a JDK 17 or later. Install one, for example openjdk-17-jdk-headless, or set JAVA_HOME to it."
    return 1
  fi
}

has_compiler() { { [ -n "${JAVA_HOME:-}" ] && [ -x "$JAVA_HOME/bin/javac" ]; } || command -v javac >/dev/null; }

maven_is_new_enough() {
  local version
  version=$(mvn -v 2>/dev/null | sed -n 's/.*Apache Maven \([0-9]*\)\.\([0-9]*\).*/\1 \2/p') || return 1
  # shellcheck disable=SC2086 # two words on purpose
  set -- ${version:-0 0}
  [ "$1" -gt 3 ] || { [ "$1" -eq 3 ] && [ "$2" -ge 8 ]; }
}

need_maven() {
  if ! maven_is_new_enough && can_install; then apt_install maven || return 1; hash -r; fi
  maven_is_new_enough || { say "Needs Maven 3.8 or later. Install it, for example with: apt install maven"; return 1; }
}
