package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.outlook.Yard;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** TDN picked for one lot and its laboratory, kept with the ranch. */
class EnergyPagesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private String lot;

    @BeforeEach
    void report() {
        lot = ranch.weighedLot("Ditch-side stack", "grass_hay");
        var sheet = new LinkedHashMap<String, String>();
        sheet.put("laboratory", "Tin Valley");
        sheet.put("howSampled", "grab");
        sheet.put("one-dm", "90");
        sheet.put("dry-cp", "10");
        sheet.put("dry-adf", "38");
        sheet.put("dry-tdn", "60.5");
        ranch.send("reports/new/" + lot, sheet);
    }

    private double tdn() {
        var kept = ranch.kept();
        return new Yard(kept, LocalDate.of(2026, 12, 1))
                .composition(kept.lots().get(UUID.fromString(lot)))
                .composition()
                .value(Analyte.TDN)
                .orElseThrow();
    }

    @Test
    void theLaboratorysOwnCanBePickedAndGivenUp() {
        assertThat(tdn()).isNotEqualTo(60.5);
        assertThat(ranch.get("reports/lot/" + lot).body()).contains("As printed: 60.5", "name=\"way\"");
        ranch.send("reports/lot/" + lot, "reports/lot/" + lot + "/energy", Map.of("way", "laboratory"));
        assertThat(tdn()).isEqualTo(60.5);
        assertThat(ranch.kept().energyPicks(UUID.fromString(lot)).ways())
                .containsExactly(Map.entry("Tin Valley", "laboratory"));
        ranch.send("reports/lot/" + lot, "reports/lot/" + lot + "/energy", Map.of("way", ""));
        assertThat(tdn()).isNotEqualTo(60.5);
        assertThat(ranch.kept().energyPicks()).isEmpty();
    }

    @Test
    void aWayThatTheFiguresDoNotAllowIsRefusedBesideTheField() {
        var answer = ranch.send("reports/lot/" + lot, "reports/lot/" + lot + "/energy", Map.of("way", "weiss-1992"));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("f-way", "do not allow");
        assertThat(ranch.kept().energyPicks()).isEmpty();
    }
}
