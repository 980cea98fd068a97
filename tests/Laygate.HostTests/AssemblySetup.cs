[assembly: TestCollectionOrderer("Laygate.Tests.LongestFirst", "Laygate.HostTests")]
