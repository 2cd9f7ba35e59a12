package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.Sealer;
import org.thumbseal.archive.StoredResult;
import org.thumbseal.json.Printable;
import org.thumbseal.json.ResultTree;
import org.thumbseal.record.ResultDocument;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.OpenedKey;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where sealed results go, and the key that seals them. */
final class ArchiveOptions {
  @Option(
      names = "--results",
      paramLabel = "DIR",
      description = "seal the results and store them, with their captures, in this directory")
  private @Nullable Path results;

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description =
          "the key that seals; made where it is missing. Default: THUMBSEAL_KEY, else"
              + " signing-key.pem in the user's configuration")
  private @Nullable Path key;

  @Mixin private PassphraseOption passphrase = new PassphraseOption();

  ArchiveOptions() {}

  /** With this key, whatever the user has. */
  ArchiveOptions(Path key, PassphraseOption passphrase) {
    this.key = key;
    this.passphrase = passphrase;
  }

  /** Opens the archive, if one is asked for; says what it made or mended on the way. */
  Optional<Archive> open(PrintWriter err) {
    Path directory = results;
    return directory == null ? Optional.empty() : Optional.of(open(directory, err));
  }

  /** Opens the archive in a directory. */
  Archive open(Path directory, PrintWriter err) {
    return open(directory, err, Archive::open);
  }

  /** Opens the archive in a directory, to build on the work of these keys. */
  Archive open(Path directory, TrustStore trust, PrintWriter err) {
    return open(directory, err, (path, sealer) -> Archive.open(path, sealer.trusting(trust)));
  }

  /** Opens the archive for a daemon, of which there is one at a time. */
  Archive openForDaemon(Path directory, PrintWriter err) {
    return open(directory, err, Archive::openForDaemon);
  }

  private Archive open(Path directory, PrintWriter err, Opening opening) {
    try {
      OpenedKey opened = KeyStore.loadOrCreate(keyFile(), passphrase.passphrases());
      opened.notes().forEach(note -> say(err, note));
      if (opened.created()) {
        say(err, opened.note() + "; keep a copy of it safe");
      }
      Archive archive = opening.of(directory, new Sealer(opened.key(), trusted()));
      archive.tellNotes(note -> say(err, note));
      return archive;
    } catch (KeyException e) {
      throw Failure.of(e);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  private TrustStore trusted() throws KeyException {
    return TrustStore.load(KeyStore.defaultTrust(keyFile()));
  }

  private static void say(PrintWriter err, String text) {
    err.println("thumbseal: " + Printable.line(text));
  }

  Optional<Path> results() {
    return Optional.ofNullable(results);
  }

  Path keyFile() {
    Path file = key;
    return file == null ? KeyStore.defaultFile(System.getenv()) : file;
  }

  StoredResult store(Archive archive, ResultDocument result, Path capture) {
    try {
      return archive.store(ResultTree.of(result), capture);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  void close(Archive archive) {
    try {
      archive.close();
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }

  /** One of the two ways to open a directory. */
  @FunctionalInterface
  private interface Opening {
    Archive of(Path directory, Sealer sealer) throws ArchiveException;
  }
}
