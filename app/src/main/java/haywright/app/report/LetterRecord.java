package haywright.app.report;

import haywright.app.report.FeedLetter.Part;
import haywright.app.words.Show;
import haywright.diet.DietRow.Sense;
import haywright.feeding.Offers;
import haywright.forage.lab.LabReport;
import haywright.ranch.Wishes;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/** What a signed letter is kept with: reports by their numbers, and by name what was decided in place of the usual. */
final class LetterRecord {
    private LetterRecord() {}

    static List<String> reports(Offers offers) {
        var ranch = offers.yard().ranch();
        return Stream.concat(offers.sure().stream(), offers.now().stream())
                .limit(1)
                .flatMap(offer -> offer.mix().portions().stream())
                .map(Portion::feed)
                .filter(feed ->
                        ranch.lots().containsKey(UUID.fromString(feed.feed().id())))
                .flatMap(feed -> ranch.reportsOn(UUID.fromString(feed.feed().id())).stream()
                        .map(report -> feed.feed().name() + ": " + report(report)))
                .toList();
    }

    private static String report(LabReport report) {
        var day = report.reported() == null ? report.sampled() : report.reported();
        return String.join(
                ", ",
                Stream.of(
                                report.laboratory().isBlank() ? "laboratory not named" : report.laboratory(),
                                report.sampleCode().isBlank() ? "no number" : "number " + report.sampleCode(),
                                day == null ? "" : Show.date(day))
                        .filter(words -> !words.isEmpty())
                        .toList());
    }

    static List<String> overrides(FeedLetter letter) {
        var ranch = letter.ranch();
        var says = new ArrayList<String>();
        var wishes = ranch.wishes()
                .getOrDefault(letter.group().id(), Wishes.none(letter.group().id()));
        wishes.feeds()
                .forEach(wish -> says.add("Limit: %s %s of %s"
                        .formatted(
                                wish.sense() == Sense.AT_LEAST ? "at least" : "at most",
                                wish.amount().asTyped(),
                                name(letter, wish.feed()))));
        wishes.limitsOff().forEach(row -> says.add("Practice limit switched off: " + row));
        if (wishes.surenessPercent() != null) {
            says.add("How sure: %s of 100".formatted(Show.significant(wishes.surenessPercent(), 4)));
        }
        ranch.energyPicks().values().stream()
                .filter(picks -> !picks.ways().isEmpty())
                .forEach(picks -> says.add("Way to TDN chosen: " + name(letter, picks.lot())));
        if (ranch.settings().herdFactor() != null) {
            says.add("Cold and waste times %s, by last winter"
                    .formatted(Show.significant(ranch.settings().herdFactor(), 3)));
        }
        Stream.of(Part.values())
                .filter(part -> part != Part.OWN && letter.isRewritten(part))
                .forEach(part -> says.add("Words written by hand: " + part.title()));
        return says;
    }

    private static String name(FeedLetter letter, UUID feed) {
        var lot = letter.ranch().lots().get(feed);
        var sale = letter.ranch().feedsForSale().get(feed);
        return lot != null ? lot.name() : sale != null ? sale.name() : "a feed that is gone";
    }
}
