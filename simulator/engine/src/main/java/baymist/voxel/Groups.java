package baymist.voxel;

/** Disjoint sets over 0..n-1; the lowest member names its set. */
final class Groups {
    private final int[] parent;

    Groups(int n) {
        parent = new int[n];
        for (int i = 0; i < n; i++) {
            parent[i] = i;
        }
    }

    int of(int member) {
        int root = member;
        while (parent[root] != root) {
            parent[root] = parent[parent[root]];
            root = parent[root];
        }
        return root;
    }

    void join(int a, int b) {
        int ra = of(a);
        int rb = of(b);
        parent[Math.max(ra, rb)] = Math.min(ra, rb);
    }
}
