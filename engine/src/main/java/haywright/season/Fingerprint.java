package haywright.season;

import haywright.season.given.Energies;
import haywright.season.given.Season;
import haywright.season.play.Blocks;
import haywright.season.play.PlanProgram;
import haywright.season.play.Truth;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.TreeMap;

/** What a book is kept by: a hash of all that moves a figure of it. */
final class Fingerprint {
    private static final int ENOUGH = 3;

    private Fingerprint() {}

    static String of(Season season, BookMaker maker) {
        try {
            var digest = MessageDigest.getInstance("SHA-256");
            var program = new PlanProgram(season, Blocks.weekly(season), Energies.expected(season.feeds()), 1);
            put(digest, program.program().toMps());
            put(digest, maker.words());
            put(digest, season.today().toString());
            put(digest, season.appetite().times(), season.appetite().sd());
            for (var feed : season.feeds()) {
                put(digest, feed.name());
                put(digest, feed.kg(), feed.sd(), feed.lossADay(), feed.carry(), feed.canBuy(), feed.price());
                var meant = feed.meant();
                put(digest, meant.sells(), meant.faceADay(), meant.isOpen() ? 1 : 0, meant.keep());
                var supply = feed.supply();
                put(
                        digest,
                        supply.loadKg(),
                        supply.freight(),
                        supply.aWeek(),
                        supply.latePercent(),
                        supply.hardPercent());
            }
            for (var eater : season.eaters()) {
                put(digest, eater.group().name());
                put(digest, eater.head(), eater.days(), eater.away());
                new TreeMap<>(eater.firstWeek()).forEach((feed, kg) -> put(digest, feed, kg));
                eater.body().ifPresent(body -> put(digest, body.start(), body.target(), body.calvingDay()));
            }
            var record = season.record();
            for (int w = 0; w < record.size(); w++) {
                put(digest, record.late()[w], record.winters().get(w).year());
                for (int e = 0; e < season.eaters().size(); e++) {
                    for (int t = 0; t < season.allWeeks(); t++) {
                        put(
                                digest,
                                record.need(w, e, t).nem(),
                                record.need(w, e, t).factor());
                    }
                }
            }
            // how far feeds may lie shows in what is drawn of them
            for (long seed = 0; record.size() > 0 && seed < ENOUGH; seed++) {
                var truth = Truth.drawn(season, 0, seed);
                put(digest, truth.weight());
                put(digest, truth.made().nem());
                put(digest, truth.made().cp());
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void put(MessageDigest digest, String text) {
        digest.update(text.getBytes(StandardCharsets.UTF_8));
        digest.update((byte) 0);
    }

    private static void put(MessageDigest digest, double... numbers) {
        var bytes = ByteBuffer.allocate(Double.BYTES * numbers.length);
        for (double number : numbers) {
            bytes.putDouble(number);
        }
        digest.update(bytes.array());
    }
}
