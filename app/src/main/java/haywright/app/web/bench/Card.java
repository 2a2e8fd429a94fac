package haywright.app.web.bench;

import haywright.app.words.Show;
import haywright.app.words.ration.RegainWords;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One way to feed a group on a card: its price, how often it holds, its pounds as a bar, what is to be said of it.
 *
 * @param holdsInTen filled of ten dots
 * @param parts of the bar, in the order of its lines
 * @param picked whether it is the one that is advised
 */
public record Card(
        String title,
        String price,
        int holdsInTen,
        String holds,
        List<Part> parts,
        List<String> notes,
        boolean picked) {
    /** Ways to fill a part of a bar; a feed has the same on every card. */
    static final int FILLS = 6;

    /** Ounces draw nothing. */
    private static final double LEAST_WIDTH = 0.5;

    private static final int MOST_SHORTFALLS = 3;

    /**
     * @param from and {@code width} percent of the longest bar
     * @param fill number of its way to be filled; the same feed has the same on every card
     * @param says {@code 22½ lb Pivot hay, first cutting}
     * @param all for the whole group: {@code 5,400 lb a day, 4.3 bales a day}
     */
    public record Part(double from, double width, int fill, String says, String all) {
        public boolean isDrawn() {
            return width >= LEAST_WIDTH;
        }

        public String at() {
            return percent(from);
        }

        public String wide() {
            return percent(width);
        }

        /** A hatch or a shade; no two alike without color. */
        public String paint() {
            return switch (fill) {
                case 0 -> "#cfc6b4";
                case 3 -> "#fff";
                case 5 -> "#57524a";
                default -> "url(#fill-%d)".formatted(fill);
            };
        }

        private static String percent(double share) {
            return String.format(Locale.ROOT, "%.1f%%", share);
        }
    }

    /** Any offers side by side, by what is written over them. */
    static List<Card> of(Offers offers, Map<String, Offer> shown) {
        var scale = Scale.of(shown.values());
        var cards = new ArrayList<Card>();
        shown.forEach((title, offer) -> cards.add(card(
                title,
                offers,
                offer,
                List.of(MixWords.lasts(offer, offers.grass()) + " Counted with the other groups on their rations."),
                false,
                scale)));
        return cards;
    }

    /** What bars side by side share. @param ids of feeds, whose place is their fill. @param longest pounds */
    private record Scale(List<String> ids, double longest) {
        static Scale of(Collection<Offer> all) {
            return new Scale(
                    all.stream()
                            .flatMap(offer -> offer.mix().portions().stream())
                            .map(portion -> portion.feed().feed().id())
                            .distinct()
                            .toList(),
                    all.stream().mapToDouble(Card::pounds).max().orElse(1));
        }
    }

    static List<Card> of(Offers offers) {
        var scale = Scale.of(Stream.of(offers.now(), offers.sure(), offers.held(), offers.even())
                .flatMap(Optional::stream)
                .toList());
        var cards = new ArrayList<Card>();
        offers.now()
                .ifPresent(offer -> cards.add(card("You feed now", offers, offer, now(offers, offer), false, scale)));
        offers.sure().ifPresent(offer -> cards.add(card("This mix", offers, offer, sure(offers, offer), true, scale)));
        offers.held()
                .ifPresent(offer ->
                        cards.add(card(RegainWords.held(offers.group()), offers, offer, held(offers), false, scale)));
        offers.even()
                .ifPresent(offer ->
                        cards.add(card("Cheaper, less sure", offers, offer, even(offers, offer), false, scale)));
        return cards;
    }

    private static double pounds(Offer offer) {
        return offer.mix().portions().stream()
                .mapToDouble(p -> Unit.POUND.fromBase(p.kgPutOut()))
                .sum();
    }

    private static Card card(
            String title, Offers offers, Offer offer, List<String> notes, boolean picked, Scale scale) {
        var parts = new ArrayList<Part>();
        double from = 0;
        for (var portion : offer.mix().portions()) {
            double width = 100 * Unit.POUND.fromBase(portion.kgPutOut()) / scale.longest();
            parts.add(new Part(
                    from,
                    width,
                    scale.ids().indexOf(portion.feed().feed().id()) % FILLS,
                    MixWords.portion(offers.yard(), offers.group(), portion),
                    MixWords.all(offers.yard(), offers.group(), portion)));
            from += width;
        }
        return new Card(
                title,
                Show.dollars(offer.mix().cost()),
                (int) Math.round(offer.holdsPercent() / 10),
                MixWords.enough(offer),
                parts,
                notes,
                picked);
    }

    private static List<String> now(Offers offers, Offer offer) {
        var notes = new ArrayList<String>();
        var faults = BenchView.shortfalls(offers, offer);
        faults.stream().limit(MOST_SHORTFALLS).map(Card::sentence).forEach(notes::add);
        if (faults.size() > MOST_SHORTFALLS) {
            notes.add("%d more are on the workings page.".formatted(faults.size() - MOST_SHORTFALLS));
        }
        if (notes.isEmpty()) {
            notes.add("It meets what they likely need.");
        }
        if (!offer.gone().isEmpty()) {
            notes.add(MixWords.lasts(offer, offers.grass()) + " Counted with every group fed as now.");
        }
        return notes;
    }

    private static List<String> sure(Offers offers, Offer offer) {
        var notes = new ArrayList<String>();
        offers.now()
                .map(now -> MixWords.apart(offer, now, offers) + MixWords.surer(offer, now))
                .ifPresent(notes::add);
        notes.add(MixWords.lasts(offer, offers.grass()) + " Counted with every group on its ration.");
        return notes;
    }

    private static List<String> held(Offers offers) {
        var notes = new ArrayList<String>();
        RegainWords.more(offers)
                .map(more -> Show.cents(more) + " less until they calve.")
                .ifPresent(notes::add);
        notes.add(RegainWords.calveHeld(offers.group()));
        return notes;
    }

    private static List<String> even(Offers offers, Offer offer) {
        var sure = offers.sure().orElseThrow();
        var notes = new ArrayList<String>();
        notes.add(MixWords.apart(offer, sure, offers));
        notes.add(
                Math.abs(offer.holdsPercent() - 50) < 5
                        ? "Half the time it’s short."
                        : "Short %s.".formatted(Show.timesInTen(100 - offer.holdsPercent())));
        return notes;
    }

    private static String sentence(String words) {
        return Show.capital(words) + (words.endsWith(".") ? "" : ".");
    }
}
