package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.quantity.Unit;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import java.util.HashMap;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnalyteTest {
    @ParameterizedTest
    @CsvSource({
        "cp, CP",
        "CRUDE PROTEIN, CP",
        "protein, CP",
        "Acid detergent fiber, ADF",
        "acid detergent fibre, ADF",
        "aNDF, NDF",
        "NO3-N, NO3N",
        "nitrate-n, NO3N",
        "Nitrate, NO3",
        "EE, FAT",
        "sulphur, S",
        "' TDN ', TDN",
        "NEm, NEM",
        "na, NA"
    })
    void isFoundByAnyOfItsNames(String name, Analyte analyte) {
        assertThat(Analyte.named(name)).isEqualTo(analyte);
    }

    @Test
    void anUnknownNameIsRefusedWithTheNearest() {
        assertThatThrownBy(() -> Analyte.named("crude protien"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no analyte of this name is known. Did you mean crude protein?");
        assertThatThrownBy(() -> Analyte.named(" ")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Analyte.named("crude protein".repeat(100_000)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("so many letters");
    }

    @Test
    void noNameMeansTwoThings() {
        var owner = new HashMap<String, Analyte>();
        for (var analyte : Analyte.values()) {
            var names = new java.util.HashSet<String>();
            names.add(analyte.id());
            names.add(analyte.words().toLowerCase(Locale.ROOT));
            analyte.synonyms().forEach(s -> names.add(s.toLowerCase(Locale.ROOT)));
            for (var name : names) {
                assertThat(owner.put(name, analyte)).as(name).isNull();
                assertThat(Analyte.named(name)).isEqualTo(analyte);
            }
        }
    }

    @Test
    void everyAnalyteHasItsRowAndItsOwnUnitFirst() {
        assertThat(PublishedTable.read(Analyte.class, "analytes.csv").rows()).hasSize(Analyte.values().length);
        for (var analyte : Analyte.values()) {
            assertThat(analyte.words()).isNotBlank();
            assertThat(analyte.accepts()).startsWith(analyte.unit()).doesNotHaveDuplicates();
            assertThat(analyte.possible().low()).isLessThan(analyte.possible().high());
        }
        assertThat(Analyte.NEM.accepts()).contains(Unit.MCAL_PER_LB, Unit.MCAL_PER_CWT);
        assertThat(Analyte.CA.accepts()).contains(Unit.GRAM_PER_KG, Unit.PPM);
        assertThat(Analyte.CP.isMeasured()).isTrue();
        assertThat(Analyte.TDN.isMeasured()).isFalse();
    }

    // The table's unit column is typed apart from the code's.
    @Test
    void theTableAndTheCodeAgreeOnUnits() {
        for (var row : PublishedTable.read(Analyte.class, "analytes.csv").rows()) {
            var unit = row.text("unit");
            var analyte = Analyte.named(row.text("analyte_id"));
            var expected = unit.startsWith("%")
                    ? Unit.PERCENT
                    : unit.equals("-") || unit.equals("index")
                            ? Unit.NONE
                            : Unit.parse(unit, analyte.unit().kind()).orElse(Unit.MEQ_PER_KG);
            assertThat(analyte.unit()).as(row.text("analyte_id")).isEqualTo(expected);
        }
    }
}
