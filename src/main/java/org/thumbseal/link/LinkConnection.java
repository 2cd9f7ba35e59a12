package org.thumbseal.link;

/** An open link. One thread reads; another may close. */
public interface LinkConnection extends AutoCloseable {

  /** What {@link #read} returns when the link is lost or at its end. */
  int LOST = -1;

  /**
   * Waits for bytes, a third of a second at most.
   *
   * @param buffer takes them from its start; must not be empty
   * @return how many came; 0 when none did in that time; {@link #LOST} for ever after a loss or the
   *     end
   */
  int read(byte[] buffer);

  /** Lets go of it, within two seconds whatever the driver does. Closing twice is harmless. */
  @Override
  void close();
}
