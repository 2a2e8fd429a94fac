package haywright.forage.lot;

/**
 * A doubt that several figures share. Equal ones are one unknown, in whatever lot they stand: a laboratory whose protein
 * reads high reads high for every lot it was sent.
 *
 * @param what "bias" of a laboratory, or "tdn" for the way that TDN was had
 * @param of whose: laboratory, method and analyte, or the id of the way
 */
public record Shared(String what, String of) implements Comparable<Shared> {
    /** Whether it is a laboratory's bias: results of another laboratory do not share it. */
    public boolean isOfLaboratory() {
        return what.equals("bias");
    }

    /** Whose it is: of a laboratory's bias in one figure the laboratory, whatever the figure; else itself. */
    public Shared whose() {
        return isOfLaboratory() ? new Shared(what, of.substring(0, of.indexOf('|'))) : this;
    }

    @Override
    public int compareTo(Shared other) {
        int first = what.compareTo(other.what);
        return first != 0 ? first : of.compareTo(other.of);
    }
}
