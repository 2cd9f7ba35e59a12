package org.thumbseal.seal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Held around what changes the files of a key, so that no program takes a change that is under way
 * for one that was cut short. The system lets go of it when its holder ends, however it ends. The
 * file stays: to remove it would take it from under whoever opened it meanwhile.
 */
final class KeyLock implements AutoCloseable {
  /**
   * What this process has. On POSIX systems to close a file lets go of all locks that the process
   * has on it, so that a second attempt here must not even open it.
   */
  private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

  private final Path file;
  private final FileChannel channel;

  private KeyLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * The lock of the key in this file.
   *
   * @throws KeyException if somebody has it
   */
  static KeyLock take(Path key) throws IOException, KeyException {
    return tryTake(key)
        .orElseThrow(
            () ->
                KeyException.machine(
                    key + ": another program is changing this key; try again when it has done so"));
  }

  /** The lock of the key in this file; empty when somebody has it, here or elsewhere. */
  static Optional<KeyLock> tryTake(Path key) throws IOException {
    Path file = KeyStore.folder(key).toRealPath().resolve("." + key.getFileName() + ".lock");
    if (!HELD.add(file)) {
      return Optional.empty();
    }
    Optional<KeyLock> taken = Optional.empty();
    try {
      taken = locked(file);
      return taken;
    } finally {
      if (taken.isEmpty()) {
        HELD.remove(file);
      }
    }
  }

  private static Optional<KeyLock> locked(Path file) throws IOException {
    FileChannel channel = OwnerOnly.open(file);
    FileLock lock = null;
    try {
      lock = channel.tryLock();
    } catch (OverlappingFileLockException e) {
      // Had by this process through another path to the same folder.
    } finally {
      if (lock == null) {
        channel.close();
      }
    }
    return lock == null ? Optional.empty() : Optional.of(new KeyLock(file, channel));
  }

  @Override
  public void close() throws IOException {
    try {
      channel.close();
    } finally {
      HELD.remove(file);
    }
  }
}
