[assembly: TestCollectionOrderer("Laygate.Tests.LongestFirst", "Laygate.ServiceTests")]
