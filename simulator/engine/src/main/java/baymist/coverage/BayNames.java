package baymist.coverage;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Writes a list of bays the short way: "bay 2", "bays 1 to 4", "bays 1, 3 and 4". */
final class BayNames {
    private static final Pattern NUMBERED = Pattern.compile("bay (\\d+)");

    private BayNames() {}

    static String join(List<String> names) {
        if (names.size() == 1) {
            return names.get(0);
        }
        int[] numbers = new int[names.size()];
        for (int i = 0; i < numbers.length; i++) {
            Matcher m = NUMBERED.matcher(names.get(i));
            if (!m.matches()) {
                return list(names);
            }
            numbers[i] = Integer.parseInt(m.group(1));
        }
        java.util.Arrays.sort(numbers);
        int last = numbers.length - 1;
        if (last >= 2 && numbers[last] - numbers[0] == last) {
            return "bays " + numbers[0] + " to " + numbers[last];
        }
        return "bays "
                + list(java.util.Arrays.stream(numbers)
                        .mapToObj(Integer::toString)
                        .toList());
    }

    /** "a", "a and b", "a, b and c". */
    static String list(List<String> words) {
        if (words.size() <= 1) {
            return String.join("", words);
        }
        return String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }
}
