package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.energy.AdfEquation;
import haywright.forage.lab.Reading;
import haywright.forage.lot.LotComposition;
import haywright.quantity.Unit;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** No feed is without a spread unless 0 was said: else sureness would buy what nobody measured. */
class NoFeedIsCertainTest {
    private static final List<Analyte> COUNTED = List.of(Analyte.CP, Analyte.TDN, Analyte.CA, Analyte.P);

    static List<FeedBook.Row> rows() {
        return FeedBook.published().rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void everyRowOfTheBookHasASpreadForWhatRationsCount(FeedBook.Row row) {
        var prior = Prior.of(row.feedClass(), Optional.of(row)).orElse(null);
        for (var analyte : COUNTED) {
            double printed = row.composition().value(analyte).orElse(0);
            boolean byLine = analyte == Analyte.TDN
                    && AdfEquation.usual(row.feedClass(), Prior.idOf(row.feedClass(), Optional.of(row)))
                            .isPresent();
            if (printed > 0 && !byLine) {
                assertThat(prior).as(row.feed()).isNotNull();
                assertThat(prior.index(analyte))
                        .as("%s of %s", analyte, row.feed())
                        .isNotNegative();
                assertThat(prior.cells().get(prior.index(analyte)).marginal().sd())
                        .isPositive();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void aTagHasTheSpreadOfItsKindBetweenLoads(FeedBook.Row row) {
        double printed = row.composition().value(Analyte.CP).orElse(0);
        if (!(printed > 0) || printed > 100) {
            return;
        }
        var made = LotComposition.ofTag(
                row.feedClass(),
                Optional.of(row),
                "feed tag",
                List.of(new Reading(Analyte.CP, printed, Unit.PERCENT, Basis.DRY_MATTER)));
        var cp = made.composition().values().get(Analyte.CP);
        assertThat(cp.value()).as("at its word").isEqualTo(printed);
        assertThat(cp.lot()).as(row.feed()).isNotNull();
        assertThat(cp.lot().sd()).isPositive();
    }
}
