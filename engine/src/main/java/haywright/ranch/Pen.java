package haywright.ranch;

import java.util.UUID;

/**
 * Where a group is, and how it is told from others; each may be empty. The key is the group.
 *
 * @param gate or pen, in the rancher's words
 * @param paintMark that they carry: "orange, left hip"
 * @param bunk where their feed goes
 */
public record Pen(UUID group, String gate, String paintMark, String bunk) {
    public static Pen notSaid(UUID group) {
        return new Pen(group, "", "", "");
    }
}
