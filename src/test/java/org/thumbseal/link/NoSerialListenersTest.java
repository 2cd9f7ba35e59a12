package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Events of the serial library come never or without end, depending on the driver (its issues 524
 * and 72), so a lost port is known by its reads alone; and it must not ask for other rights.
 */
class NoSerialListenersTest {
  @Test
  void ofTheSerialLibraryNoEventsAreTakenAndNoRightsAskedFor() {
    Set<String> called =
        new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.thumbseal")
                .stream()
                .flatMap(one -> one.getMethodCallsFromSelf().stream())
                .filter(call -> call.getTargetOwner().isEquivalentTo(SerialPort.class))
                .map(JavaMethodCall::getName)
                .collect(Collectors.toSet());
    assertThat(called)
        .contains("openPort", "readBytes", "setDTRandRTS")
        .doesNotContain(
            "addDataListener", "allowElevatedPermissionsRequest", "writeBytes", "getOutputStream");
  }
}
