package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TroubleTest {
    /** As the C library of Linux words them: ENOSPC, EFBIG, EDQUOT, EROFS. */
    @ParameterizedTest
    @CsvSource({
        "No space left on device, DISK_FULL",
        "File too large, DISK_FAILS",
        "Disk quota exceeded, DISK_FAILS",
        "Read-only file system, READ_ONLY"
    })
    void aFileThatCannotBeWrittenHasItsTrueCause(String said, Trouble trouble) {
        var failure = new IllegalStateException(new UncheckedIOException(new IOException("/home/x: " + said)));
        assertThat(Trouble.of(failure)).contains(trouble);
    }
}
