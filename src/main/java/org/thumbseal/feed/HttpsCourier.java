package org.thumbseal.feed;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.thumbseal.seal.Login;

/**
 * Puts documents to an HTTPS address, each under its id: {@code PUT address/ID}. PUT is idempotent
 * (RFC 9110 section 9.2.2), so a second one changes nothing. Redirects are not followed: they would
 * take documents and password where nobody sent them.
 */
final class HttpsCourier implements Courier {
  static final Duration PATIENCE = Duration.ofSeconds(30);

  /** These are about the document, RFC 9110 section 15.5 and RFC 6585; others about the address. */
  private static final Set<Integer> OF_DOCUMENT =
      Set.of(400, 402, 406, 409, 410, 411, 412, 413, 414, 415, 416, 417, 422, 431, 451);

  private final HttpClient client;
  private final FeedTarget target;
  private final Duration patience;

  HttpsCourier(FeedTarget target) {
    this(target, PATIENCE);
  }

  HttpsCourier(FeedTarget target, Duration patience) {
    this.target = target;
    this.patience = patience;
    this.client =
        HttpClient.newBuilder()
            .sslContext(target.tls().context())
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .connectTimeout(patience)
            .build();
  }

  @Override
  public Answer deliver(Parcel parcel) throws InterruptedException {
    try {
      return answer(status(request(parcel)));
    } catch (TimeoutException e) {
      return new Answer.Trouble("there was no answer in time");
    } catch (IOException e) {
      return new Answer.Trouble(NetworkTrouble.text(e));
    }
  }

  private HttpRequest request(Parcel parcel) {
    URI address = URI.create(target.text() + "/" + SafeName.of(parcel.label().id()));
    HttpRequest.Builder request =
        HttpRequest.newBuilder(address)
            .timeout(patience)
            .header("Content-Type", "application/json")
            .PUT(BodyPublishers.ofByteArray(parcel.bytes()));
    target.login().ifPresent(login -> request.header("Authorization", authorization(login)));
    return request.build();
  }

  /** RFC 7617 for a name and a password, RFC 6750 for a token. */
  private static String authorization(Login login) {
    return login
        .user()
        .map(user -> user + ":" + login.secret())
        .map(pair -> Base64.getEncoder().encodeToString(pair.getBytes(StandardCharsets.UTF_8)))
        .map(encoded -> "Basic " + encoded)
        .orElse("Bearer " + login.secret());
  }

  /** The limit is for all of the answer, not for its beginning alone. */
  private int status(HttpRequest request)
      throws IOException, InterruptedException, TimeoutException {
    CompletableFuture<HttpResponse<Void>> sent =
        client.sendAsync(request, BodyHandlers.discarding());
    try {
      return sent.get(patience.toMillis(), TimeUnit.MILLISECONDS).statusCode();
    } catch (ExecutionException e) {
      throw e.getCause() instanceof IOException io ? io : new IOException(e.getCause());
    } finally {
      sent.cancel(true);
    }
  }

  private static Answer answer(int status) {
    if (status / 100 == 2) {
      return new Answer.Accepted();
    }
    String why = "the answer is HTTP " + status;
    if (OF_DOCUMENT.contains(status)) {
      return new Answer.Refused(why);
    }
    return new Answer.Trouble(why + whatToDo(status));
  }

  private static String whatToDo(int status) {
    if (status / 100 == 3) {
      return ", to go elsewhere; name the new address";
    }
    return switch (status) {
      case 401, 403, 407 -> "; look at the credentials file, and what this user may do there";
      case 404, 405 -> "; is this the right address?";
      default -> "";
    };
  }

  @Override
  public void rest() {
    // The client keeps connections for as long as the other side does.
  }
}
