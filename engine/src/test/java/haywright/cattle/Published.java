package haywright.cattle;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.quantity.Unit;
import haywright.workings.PublishedTable;
import haywright.workings.PublishedTable.Row;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.stream.Collectors;

/** The published rows of this room, and what both tests of them need. */
public final class Published {
    public static final double LB = Unit.POUND.toBase(1);

    private Published() {}

    public static PublishedTable table(String name) {
        return PublishedTable.read(Published.class, name);
    }

    /** Rows that cannot be computed yet, with the reason. */
    static Map<String, String> notYet() {
        return table("/not-yet/cattle.csv").rows().stream()
                .collect(Collectors.toMap(r -> r.text("id"), r -> r.text("reason")));
    }

    public static JsonNode json(Row row, String column) {
        try {
            return new ObjectMapper().readTree(row.text(column));
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static double number(Row row, String column) {
        return row.number(column).orElseThrow();
    }

    /** NEm, Mcal/kg, of a diet by its TDN: NRC 1996, written out here so that no other room is trusted. */
    public static double nem(double tdn) {
        double me = 0.82 * 0.04409 * tdn;
        return 1.37 * me - 0.138 * me * me + 0.0105 * me * me * me - 1.12;
    }

    /** TDN, %, of a diet by its NEm: the same, backwards by halving. */
    public static double tdn(double nem) {
        double low = 30;
        double high = 95;
        for (int i = 0; i < 80; i++) {
            double middle = (low + high) / 2;
            if (nem(middle) < nem) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    public static Animal cow(LiveWeight weight, Pregnancy pregnancy, Lactation lactation) {
        return new Animal(AnimalClass.MATURE_COW, Breed.AVERAGE, weight, 5, pregnancy, lactation, 0, weight.kg(), 20);
    }

    public static Animal growing(double shrunkKg, double finalKg, double gain) {
        return new Animal(
                AnimalClass.GROWING,
                Breed.AVERAGE,
                LiveWeight.shrunk(shrunkKg),
                5,
                null,
                null,
                gain,
                finalKg,
                Animal.NO_ACCLIMATIZATION);
    }
}
