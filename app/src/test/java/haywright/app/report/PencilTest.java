package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.RanchDocument;
import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Ranch;
import haywright.ration.LimitAnswer;
import haywright.ration.Ration;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What a feeder reads multiplies with a pencil, and what is fed so is the ration that was worked out. */
class PencilTest {
    /** By definition of the pound. */
    private static final double KG_IN_A_POUND = 0.45359237;

    private static final Ranch DEMO = demo();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);

    private static Ranch demo() {
        try (var in = Objects.requireNonNull(RanchDocument.class.getResourceAsStream("tin-lantern.json"))) {
            return new RanchDocument().read(in.readAllBytes());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void theTableOfALetterMultipliesOverTheDemoAndRandomPricesAndDays() {
        var draws = new SplittableRandom(20261129);
        int checked = 0;
        for (int i = 0; i < 12; i++) {
            var ranch = i == 0 ? DEMO : otherPrices(draws);
            var day = i == 0 ? DAY : DAY.plusDays(draws.nextInt(150));
            var rations = new Rations(ranch, day);
            for (var group : ranch.groups().values()) {
                if (rations.ration(group) instanceof Ration ration) {
                    checked++;
                    checkLetter(rations, group);
                    checkPromises(rations, group, ration);
                }
            }
        }
        assertThat(checked).isGreaterThan(20);
    }

    private static Ranch otherPrices(SplittableRandom draws) {
        var ranch = DEMO;
        for (var sale : DEMO.feedsForSale().values()) {
            ranch = ranch.with(new FeedForSale(
                    sale.id(),
                    sale.name(),
                    sale.feedClass(),
                    sale.bookRow(),
                    sale.tag(),
                    Quantity.of(60 + 400 * draws.nextDouble(), Unit.DOLLAR_PER_TON),
                    sale.atMost(),
                    sale.delivery()));
        }
        return ranch;
    }

    private static void checkLetter(Rations rations, Group group) {
        var bales = rations.ranch().lots().values();
        double loads = loads(rations, group);
        // the demo loads over a scale: each feed is what the scale reads more than before it
        double reading = 0;
        for (var row : FeedLetter.workedOut(new Offers(rations, group)).letter().table()) {
            if (row.forTheGroup().equals("free choice")) {
                continue;
            }
            double pounds = aHead(row.aHead()) * group.head();
            if (row.forTheGroup().contains("bale")) {
                var lot = bales.stream()
                        .filter(l -> l.name().equals(row.feed()))
                        .findFirst()
                        .orElseThrow();
                double bale = Math.rint(haywright.outlook.LotTons.baleKg(lot).orElseThrow() / KG_IN_A_POUND);
                double written =
                        number(row.forTheGroup().replaceAll("1 bale every ", "").split(" ")[0]);
                double pencil = row.forTheGroup().contains("every")
                        ? bale / pounds
                        : pounds / bale * (row.forTheGroup().contains("week") ? 7 : 1);
                assertThat(Math.abs(written - pencil)).as(row.toString()).isLessThanOrEqualTo(0.1001);
            } else {
                double read = number(row.forTheGroup().split(" ")[0]);
                assertThat(Math.abs(loads * (read - reading) - pounds))
                        .as(row.toString())
                        .isLessThanOrEqualTo(loads * 1.0501);
                reading = read;
            }
        }
    }

    /** Even loads a day, by the pounds of all feeds that are loaded and what the wagon holds. */
    private static double loads(Rations rations, Group group) {
        double all = rations.toFeed(group).stream()
                .filter(p -> !p.feed().feed().isLooseMineral())
                .mapToDouble(p -> p.kgPutOut() / KG_IN_A_POUND * group.head())
                .sum();
        return Math.ceil(all
                        / Objects.requireNonNull(rations.ranch().outfit().mixerHolds())
                                .in(Unit.POUND)
                - 1e-9);
    }

    /** Every limit is kept, or missed by less than a hundredth and so said. */
    private static void checkPromises(Rations rations, Group group, Ration ration) {
        var mix = rations.weighable(group, ration);
        for (LimitAnswer limit : mix.limits()) {
            double share = limit.margin() / Math.max(1e-9, Math.abs(limit.row().limit()));
            assertThat(share).as(group.name() + ": " + limit).isGreaterThan(-0.01);
        }
        assertThat(mix.cost() / ration.cost()).as(group.name()).isBetween(0.99, 1.03);
    }

    private static double aHead(String written) {
        var words = written.split(" ");
        return number(words[0]) / (words[1].equals("oz") ? 16 : 1);
    }

    private static double number(String written) {
        var digits = written.replace("½", "").replace(",", "");
        return (digits.isEmpty() ? 0 : Double.parseDouble(digits)) + (written.endsWith("½") ? 0.5 : 0);
    }
}
