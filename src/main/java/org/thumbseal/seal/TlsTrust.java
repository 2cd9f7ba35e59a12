package org.thumbseal.seal;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/** Whose certificates a TLS connection accepts; names are checked by those who connect. */
public final class TlsTrust {
  private static final int LARGEST_FILE = 1 << 20;

  private final SSLContext context;
  private final Optional<TrustManagerFactory> managers;

  private TlsTrust(SSLContext context, Optional<TrustManagerFactory> managers) {
    this.context = context;
    this.managers = managers;
  }

  /**
   * Accepts what these authorities have signed, and nothing else.
   *
   * @param authorities file of one or more certificates in PEM; absent: those that Java knows
   * @throws KeyException if the file cannot be read or holds no certificate
   */
  public static TlsTrust of(Optional<Path> authorities) throws KeyException {
    try {
      return authorities.isEmpty()
          ? new TlsTrust(SSLContext.getDefault(), Optional.empty())
          : of(authorities.get(), certificates(authorities.get()));
    } catch (GeneralSecurityException | IOException e) {
      throw KeyException.machine("TLS cannot be set up on this Java: " + e.getMessage());
    }
  }

  private static TlsTrust of(Path file, Collection<? extends Certificate> authorities)
      throws GeneralSecurityException, IOException, KeyException {
    if (authorities.isEmpty()) {
      throw new KeyException(file + ": holds no certificate; name one in PEM form");
    }
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    int number = 0;
    for (Certificate authority : authorities) {
      store.setCertificateEntry("authority-" + number++, authority);
    }
    TrustManagerFactory factory =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    factory.init(store);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, factory.getTrustManagers(), null);
    return new TlsTrust(context, Optional.of(factory));
  }

  /** For what speaks TLS by the JDK. */
  public SSLContext context() {
    return context;
  }

  /** For what makes a context of its own; absent: those of Java. */
  public Optional<TrustManagerFactory> managers() {
    return managers;
  }

  private static Collection<? extends Certificate> certificates(Path file) throws KeyException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new KeyException(file + ": is no plain file; name the certificate of the authority");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST_FILE);
      return CertificateFactory.getInstance("X.509")
          .generateCertificates(new ByteArrayInputStream(bytes));
    } catch (NoSuchFileException e) {
      throw new KeyException(file + ": no such file; name the certificate of the authority");
    } catch (CertificateException e) {
      throw new KeyException(file + ": is no certificate in PEM form");
    } catch (IOException e) {
      throw KeyException.machine(file + ": cannot be read");
    }
  }
}
