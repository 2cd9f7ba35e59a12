package org.thumbseal.feed;

import java.io.EOFException;
import java.io.IOException;
import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.net.http.HttpTimeoutException;
import java.nio.channels.UnresolvedAddressException;
import javax.net.ssl.SSLException;

/** What is wrong with a connection, for a person. */
final class NetworkTrouble {
  private NetworkTrouble() {}

  /** In half a sentence, with what to do. */
  static String text(IOException e) {
    if (e instanceof UnknownHostException || hasCause(e, UnresolvedAddressException.class)) {
      return "the name of the host is not known; is there a network?";
    }
    if (e instanceof SSLException ssl) {
      return tls(ssl);
    }
    if (e instanceof SocketTimeoutException || e instanceof HttpTimeoutException) {
      return "there was no answer in time";
    }
    if (e instanceof ConnectException || e instanceof NoRouteToHostException) {
      return "cannot be reached: " + reason(e);
    }
    return "the connection was lost: " + reason(e);
  }

  private static String tls(SSLException e) {
    String all = causes(e);
    if (all.contains("unable to find valid certification path") || all.contains("trust anchor")) {
      return "its certificate is by no authority that is known here; name that one with --ca";
    }
    if (all.contains("No subject alternative") || all.contains("No name matching")) {
      return "its certificate is for another name; name the host as the certificate does";
    }
    return all.contains("expired") || all.contains("NotAfter")
        ? "its certificate has expired"
        : "no encrypted connection: " + reason(e);
  }

  private static String causes(Throwable e) {
    StringBuilder all = new StringBuilder();
    for (Throwable t = e; t != null; t = t.getCause()) {
      all.append(t.getMessage()).append('\n');
    }
    return all.toString();
  }

  private static boolean hasCause(Throwable e, Class<?> type) {
    return type.isInstance(e.getCause()) || (e.getCause() != null && hasCause(e.getCause(), type));
  }

  private static String reason(IOException e) {
    // Netty puts the address behind what the system says; the line has it already.
    if (e.getCause() instanceof ConnectException plain && plain.getMessage() != null) {
      return plain.getMessage();
    }
    String message = e.getMessage();
    return message == null || e instanceof EOFException ? "closed by the other side" : message;
  }
}
