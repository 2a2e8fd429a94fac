package haywright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.document.TinLantern;
import haywright.cattle.herd.Regrouping;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** A paper is of the one that was named, or of none. */
class SheetsTest {
    @Test
    void ofTwoOfOneNameTheIdSaysWhich() {
        var ranch = TinLantern.ranch();
        var cows = ranch.groups().values().iterator().next();
        var split = Regrouping.split(
                cows, new UUID(5, 5), cows.name(), 10, Regrouping.Who.ALIKE, LocalDate.of(2026, 12, 1));
        var twins = ranch.with(split.stays()).with(split.goes());
        assertThatThrownBy(() -> Sheets.group(twins, cows.name()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(cows.id().toString())
                .hasMessageContaining(new UUID(5, 5).toString());
        assertThat(Sheets.group(twins, new UUID(5, 5).toString()).head()).isEqualTo(10);
        assertThat(Sheets.group(ranch, cows.name().toUpperCase(Locale.ROOT))).isEqualTo(cows);
    }
}
